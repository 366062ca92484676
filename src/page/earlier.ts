/** Where the page lays visit files that were brought to compare with: no folder of anyone is called so. */
export const EARLIER = ':earlier/';
