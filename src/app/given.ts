import { LossbookError } from '../errors.ts';
import { sentence } from '../exchange/sentence.ts';
import { adopt } from './analyst.ts';
import { looksLikeBook } from './book/looksLikeBook.ts';
import { failureOf } from './failure.ts';
import { bookSource } from './flightSources.ts';
import { type Arrived, type TakenIn, takeInAll, textOf } from './intake.ts';
import { go } from './route.ts';
import {
  asOfNow,
  current,
  leftAside,
  makeWay,
  notice,
  problem,
  reviewAgain,
  seekCauses,
  show,
  unread,
  work,
} from './state.ts';

/**
 * Takes files that were dropped, pasted or picked: logs go into the logbook, and one that is alone is shown; a card
 * or plan alone goes to the flight that is shown; an exported logbook comes back. What came of it is told in any case,
 * but the screen is not taken from what the reader began meanwhile.
 */
export async function openFiles(files: readonly File[]): Promise<void> {
  notice.value = null;
  problem.value = null;
  unread.value = null;
  leftAside.value = [];
  const [book, ...more] = files;
  if (book !== undefined && more.length === 0 && (await looksLikeBook(book))) return bringBack(book);
  makeWay();
  const stands = asOfNow();
  const taken = await takeInAll(files);
  if (taken === null) return seekCauses(stands);
  const { arrived, leftAside: aside } = taken;
  const [first] = arrived;
  if (first !== undefined && arrived.length === 1 && stands()) {
    adopt(taken.analyst);
    return showArrived(first, aside);
  }
  taken.analyst.stop();
  leftAside.value = aside;
  if (first !== undefined) notice.value = arrivedLine(arrived);
  if (!stands()) return;
  if (first !== undefined) go('logbook');
  else if (aside.length === 1) notRead(files, aside);
  else if (aside.length === 0) await takeAlone(taken);
  await seekCauses(stands);
}

/** The only log could not be read: the reader is told why, and may say which its columns are. */
function notRead(files: readonly File[], [failed]: TakenIn['leftAside']): void {
  if (failed === undefined) return;
  const { failure } = failed;
  problem.value = failure;
  leftAside.value = [];
  if (/^(log-no-(time|motion|table)|map-.*)$/.test(failure.code ?? '') && failure.columns?.length)
    unread.value = { files, failure };
}

function showArrived({ flight, result, known }: Arrived, aside: TakenIn['leftAside']): Promise<void> {
  return work(flight.title, async (_, stands) => {
    leftAside.value = aside;
    const source = bookSource(flight);
    // The kept copy, not the file given: that one may change on the disk.
    const files = await source.load();
    if (!stands()) return;
    if (known) notice.value = `${flight.title} was in the logbook already and is opened from there.`;
    show(source, files, result);
  });
}

function arrivedLine(arrived: readonly Arrived[]): string {
  const known = arrived.filter((a) => a.known).length;
  const fresh = arrived.length - known;
  const parts = [
    fresh > 0 ? `${fresh} ${fresh === 1 ? 'flight' : 'flights'} came into the logbook` : '',
    known > 0 ? `${known} ${known === 1 ? 'was' : 'were'} there already` : '',
  ];
  return sentence(parts.filter((p) => p !== '').join(', '));
}

/** A card or plan without a log belongs to the flight that is shown. */
async function takeAlone({ loneCards, lonePlans }: TakenIn): Promise<void> {
  const [card] = loneCards;
  const [plan] = lonePlans;
  const lone = card ?? plan;
  if (lone === undefined) return;
  if (current.peek() === null) {
    const code = card === undefined ? 'log-is-a-plan' : 'log-is-a-card';
    problem.value = failureOf(new LossbookError(code, {}, { file: lone.name }));
    return;
  }
  try {
    await reviewAgain({
      ...(card === undefined ? {} : { card: await textOf(card) }),
      ...(plan === undefined ? {} : { plan: await textOf(plan) }),
    });
  } catch (error) {
    problem.value = failureOf(error, { file: lone.name });
  }
}

/** Brings an exported logbook back. */
function bringBack(file: File): Promise<void> {
  return work(file.name, async (say, stands) => {
    const { importBook } = await import('./book/importBook.ts');
    const { came, there } = await importBook(file, say, stands);
    if (!stands()) return;
    notice.value = sentence(
      `${came} ${came === 1 ? 'flight' : 'flights'} came into the logbook from ${file.name}${there > 0 ? `, ${there} ${there === 1 ? 'was' : 'were'} there already` : ''}`,
    );
    go('logbook');
  });
}
