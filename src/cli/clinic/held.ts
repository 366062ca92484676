import { existsSync, rmdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { because, refused } from '../../clinic/outcome.ts';
import { withheld } from '../../clinic/withheld.ts';
import type { Outcome } from '../../model/clinic.ts';
import type { MadeFile } from '../../papers/makePapers.ts';
import { reasonOf } from '../exits.ts';
import { isLink, lastOutcome, moveInPlace, putInPlace, refuseLink } from './disk.ts';

/**
 * Papers lie here until everyone in the folder was looked at: that a person's files may be someone else's is seen only then, and
 * such papers must never lie where papers are printed from. The name says so to whoever finds it.
 */
const NOT_CHECKED = '.not-checked-yet';

export const heldAt = (out: string, stem: string): string => join(out, NOT_CHECKED, stem);

/** What is kept back of a person, or null. */
export const heldOf = (out: string, stem: string): Outcome | null =>
  isLink(join(out, NOT_CHECKED)) ? null : lastOutcome(heldAt(out, stem));

/** Keeps a person's papers back. Throws as the file system does. */
export function hold(out: string, outcome: Outcome, files: readonly MadeFile[]): Outcome {
  refuseLink(join(out, NOT_CHECKED));
  const folder = heldAt(out, outcome.stem);
  return putInPlace(folder, outcome, files, lastOutcome(folder));
}

/** Takes away what is kept back of someone who gets no papers. */
export function dropHeld(out: string, stem: string): void {
  if (!isLink(join(out, NOT_CHECKED))) rmSync(heldAt(out, stem), { recursive: true, force: true });
}

/** Puts what was kept back where papers lie. Nothing where it was done before. Throws as the file system does. */
function giveOut(out: string, { stem, key }: Outcome): void {
  refuseLink(join(out, NOT_CHECKED));
  const held = heldOf(out, stem);
  if (held?.key === key) moveInPlace(heldAt(out, stem), join(out, stem), held);
}

/** Everyone's outcome after the check, and the system's reason where papers could not be put in place. */
interface Given {
  outcomes: Outcome[];
  unsaved: string | null;
}

/**
 * Papers that may show someone else's days are worse than none, so they are taken away, and both people told. Of the others
 * `all`: everyone was looked at, so they are given their papers; `part`: of another part that is not known yet, and the papers
 * wait; `some`: the run ended early, so they wait too, and the next run goes on from them. `outOf`: the results folder of a person.
 */
export function giveOutAll(
  outcomes: readonly Outcome[],
  outOf: (outcome: Outcome) => string,
  looked: 'all' | 'part' | 'some',
): Given {
  let unsaved: string | null = null;
  const given = withheld(outcomes).map((outcome, i) => {
    const out = outOf(outcomes[i]!);
    if (outcome !== outcomes[i]) {
      withdraw(out, outcome);
      return outcome;
    }
    if (!outcome.facts || looked === 'part') return outcome;
    if (looked === 'some')
      return heldOf(out, outcome.stem)?.key === outcome.key ? refused(outcome, because('heldBack')) : outcome;
    try {
      giveOut(out, outcome);
      return outcome;
    } catch (error) {
      unsaved ??= reasonOf(error);
      return refused(outcome, because('unsaved', { actual: reasonOf(error) }));
    }
  });
  return { outcomes: given, unsaved };
}

/** Takes away what is kept back of people who are nobody's any more, and the empty place. */
export function clearHeld(out: string, whole: boolean): void {
  const place = join(out, NOT_CHECKED);
  if (isLink(place) || !existsSync(place)) return;
  try {
    if (whole) rmSync(place, { recursive: true, force: true });
    else rmdirSync(place);
  } catch {
    // Other parts have theirs there, or a worker of a queue that was slow: the next run clears it.
  }
}

/** Takes away what an earlier run made for someone who now has no papers: it is of other files or of someone else. */
export function withdraw(out: string, outcome: Outcome): void {
  const folder = join(out, outcome.stem);
  try {
    dropHeld(out, outcome.stem);
    const last = lastOutcome(folder);
    // Without a key it is never taken for an answer: once the files are put right, the next run makes the papers.
    if (last) putInPlace(folder, { ...outcome, key: '' }, [], last);
  } catch {
    // On a full disk the old papers stay; the worklist says that they are not of this run.
  }
}
