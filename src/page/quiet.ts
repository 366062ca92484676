// First in the page. No policy of a page closes this door: one engine sends to a server of its choice through it even where
// nothing may be connected to.
for (const name of ['RTCPeerConnection', 'webkitRTCPeerConnection', 'RTCDataChannel', 'WebTransport'])
  Reflect.deleteProperty(globalThis, name);
