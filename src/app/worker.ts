import { LossbookError } from '../errors.ts';
import { buildFlight } from '../flight/buildFlight.ts';
import { blobSource } from '../log/byteSource.ts';
import { type ColumnSample, columnSample } from '../log/columnSample.ts';
import { fileKind } from '../log/fileKind.ts';
import { withinLimit } from '../log/limits.ts';
import { readLog } from '../log/readLog.ts';
import type { ColumnChoice, Log } from '../log/types.ts';
import { readMission } from '../mission/readCard.ts';
import type { Mission } from '../mission/types.ts';
import type { SearchProgress } from '../refly/bestAscent.ts';
import { reviewLog } from '../review/reviewFlight.ts';
import type { Analysis } from '../review/types.ts';
import type { TextFile } from './book/types.ts';
import { failureOf } from './failure.ts';
import { headersKey } from './headersKey.ts';
import type {
  Ask,
  ComparisonRequest,
  EditablePlan,
  FileHandle,
  PageReviewRequest,
  PlanSheetRequest,
  Reply,
  ReviewResult,
  StitchRequest,
  Tasks,
} from './protocol.ts';

/** The worker's global scope, typed by hand: the DOM's and the worker's type libraries cannot be used together. */
interface WorkerScope {
  onmessage: ((event: MessageEvent<Ask>) => void) | null;
  postMessage(message: Reply, transfer?: Transferable[]): void;
}

const scope = self as unknown as WorkerScope;

/** Tells the page what is being done, and the share that is done where it is known. */
type Say = (text: string, share?: number | null) => void;

interface ReadOnce {
  readonly key: string;
  readonly log: Log;
  readonly headers: readonly string[];
  readonly columns: readonly ColumnSample[];
  readonly map: readonly ColumnChoice[];
}

/** The log read last: a card is edited many times over one log. */
let readLast: ReadOnce | null = null;
/** Headers of the table being read, for a failure to carry. */
let headersSeen: readonly string[] = [];
let columnsSeen: readonly ColumnSample[] = [];

/** Buffers of the sampled channels, each once, so that they are handed over and not copied; the log's own stay. */
function buffersOf(analysis: Analysis, log: Log): Transferable[] {
  const kept = new Set([log.time, ...Object.values(log.channels)].map((a) => a.buffer));
  const arrays = [analysis.strips.time_s, ...Object.values(analysis.strips.channels).map((s) => s.values)];
  const given = arrays.map((a) => a.buffer as ArrayBuffer).filter((b) => !kept.has(b));
  return [...new Set(given)];
}

async function bytesOf({ name, blob }: FileHandle): Promise<Uint8Array> {
  withinLimit('fileBytes', blob.size, name);
  return new Uint8Array(await blob.arrayBuffer());
}

/** The browser's own complaint about a file becomes the catalogue's. */
function inWords(error: unknown): unknown {
  if (!(error instanceof DOMException)) return error;
  return new LossbookError('file-unreadable', {
    reason: 'the browser could not read it (is it a folder, or was it moved?)',
  });
}

/** Choices that apply to these headers: the reader's own, else what is remembered for logs like this one. */
function choicesFor(request: PageReviewRequest, headers: readonly string[]): readonly ColumnChoice[] {
  if (request.map !== undefined) return request.map;
  const key = headersKey(headers);
  return request.remembered?.find((r) => headersKey(r.headers) === key)?.choices ?? [];
}

/** The log of a request, read at most once for one key, choice of columns and part. */
async function logOf(request: PageReviewRequest, say: Say): Promise<ReadOnce> {
  const last = readLast;
  const same =
    last !== null &&
    request.key === last.key &&
    (request.part ?? last.log.source.part) === last.log.source.part &&
    JSON.stringify(choicesFor(request, last.headers)) === JSON.stringify(last.map);
  if (same) return last;
  readLast = null;
  let map: readonly ColumnChoice[] = [];
  const { name, blob } = request.log;
  withinLimit('fileBytes', blob.size, name);
  const log = await readLog(blobSource(blob), {
    name,
    onProgress: (share) => say('reading the log', share),
    onColumns: (columns) => {
      columnsSeen = columns.map(columnSample);
    },
    map: (headers) => {
      headersSeen = headers;
      map = choicesFor(request, headers);
      return map;
    },
    ...(request.part === undefined ? {} : { part: request.part }),
  });
  const read = { key: request.key ?? '', log, headers: headersSeen, columns: columnsSeen, map };
  if (request.key !== undefined) readLast = read;
  return read;
}

/** What only some tasks need is fetched with the first of them: the first review waits for less. */
async function planOf({ bytes, name }: NonNullable<PageReviewRequest['plan']>, mission: Mission) {
  const { readPlan } = await import('../plan/readPlan.ts');
  return readPlan(bytes, name, mission);
}

function missionOf({ card, world, targetAltitude_m }: PageReviewRequest): Mission {
  return readMission({
    ...(card === undefined ? {} : { card }),
    ...(world === undefined ? {} : { world }),
    ...(targetAltitude_m === undefined ? {} : { targetAltitude_m }),
  });
}

async function review(request: PageReviewRequest, say: Say) {
  headersSeen = [];
  columnsSeen = [];
  // A card that cannot be read is told before a large log is.
  const mission = missionOf(request);
  const { log, headers, columns, map } = await logOf(request, say);
  say('working out where the delta-v went');
  const plan = request.plan === undefined ? null : await planOf(request.plan, mission);
  const analysis = await reviewLog(log, mission, request.card?.name ?? null, plan, request.causes);
  const result: ReviewResult = { analysis, headers, columns, map };
  return { result, transfer: buffersOf(analysis, log) };
}

async function planOfLog(request: PageReviewRequest, say: Say): Promise<EditablePlan> {
  const mission = missionOf(request);
  const { log } = await logOf(request, say);
  const { editableFlight } = await import('./plan/editablePlan.ts');
  return editableFlight(log, mission);
}

/** The file that a failure is about where it does not say so itself. */
function fileAsked({ task, request }: Ask): string {
  switch (task) {
    case 'best':
      return (request as Tasks['best']['request']).card.name;
    case 'checkPlan':
      return (request as PlanSheetRequest).plan.name;
    case 'editPlan':
      return (request as Tasks['editPlan']['request']).plan.name;
    case 'kind':
    case 'card':
      return (request as FileHandle | TextFile).name;
    case 'compare':
    case 'stitch':
      return '';
    default:
      return (request as PageReviewRequest).log.name;
  }
}

scope.onmessage = async ({ data: asked }) => {
  const { id } = asked;
  const say: Say = (text, share = null) => scope.postMessage({ id, kind: 'progress', text, share });
  try {
    if (asked.task === 'kind') {
      const file = asked.request as FileHandle;
      scope.postMessage({ id, kind: 'done', result: fileKind(await bytesOf(file), file.name) });
      return;
    }
    if (asked.task === 'card') {
      const { checkCard } = await import('./card/checkCard.ts');
      scope.postMessage({ id, kind: 'done', result: checkCard(asked.request as TextFile) });
      return;
    }
    if (asked.task === 'checkPlan') {
      const { checkSheet } = await import('./plan/checkSheet.ts');
      scope.postMessage({ id, kind: 'done', result: await checkSheet(asked.request as PlanSheetRequest) });
      return;
    }
    if (asked.task === 'editPlan') {
      const { plan, card } = asked.request as Tasks['editPlan']['request'];
      const { editableFile } = await import('./plan/editablePlan.ts');
      const result = await editableFile(await bytesOf(plan), plan.name, card);
      scope.postMessage({ id, kind: 'done', result });
      return;
    }
    if (asked.task === 'planOfFlight') {
      scope.postMessage({
        id,
        kind: 'done',
        result: await planOfLog(asked.request as PageReviewRequest, say),
      });
      return;
    }
    if (asked.task === 'best') {
      const { bestPlan } = await import('./plan/bestPlan.ts');
      scope.postMessage({
        id,
        kind: 'done',
        result: bestPlan(asked.request as Tasks['best']['request'], say),
      });
      return;
    }
    if (asked.task === 'attempt') {
      const { analysis } = (await review(asked.request as PageReviewRequest, say)).result;
      const { attemptOf } = await import('../attempts/attempt.ts');
      scope.postMessage({ id, kind: 'done', result: attemptOf(analysis.review, analysis.strips) });
      return;
    }
    if (asked.task === 'bestAttempt') {
      const request = asked.request as PageReviewRequest;
      const { log } = await logOf(request, () => undefined);
      const { bestAttemptOf } = await import('../attempts/bestAttempt.ts');
      say('searching the best ascent', 0);
      const onProgress = ({ done }: SearchProgress) => say('searching the best ascent', done);
      const result = await bestAttemptOf(log, missionOf(request), { onProgress });
      scope.postMessage({ id, kind: 'done', result });
      return;
    }
    if (asked.task === 'stitch') {
      const { flights, ...comparison } = asked.request as StitchRequest;
      const { stitchAll } = await import('../attempts/stitchAll.ts');
      const result = await stitchAll(comparison, async (name) => {
        const request = flights.get(name);
        if (request === undefined) return null;
        const { log } = await logOf(request, () => undefined);
        return buildFlight(log, missionOf(request));
      });
      scope.postMessage({ id, kind: 'done', result });
      return;
    }
    if (asked.task === 'compare') {
      const { attempts, options } = asked.request as ComparisonRequest;
      const { compareAttempts } = await import('../attempts/compare.ts');
      scope.postMessage({ id, kind: 'done', result: compareAttempts(attempts, options) });
      return;
    }
    const { result, transfer } = await review(asked.request as PageReviewRequest, say);
    scope.postMessage({ id, kind: 'done', result }, transfer);
  } catch (error) {
    const failure = {
      ...failureOf(inWords(error), { file: fileAsked(asked) }),
      headers: headersSeen,
      columns: columnsSeen,
    };
    scope.postMessage({ id, kind: 'failed', failure });
  }
};
