import type { CompareOptions } from '../attempts/compare.ts';
import type { Attempt, Comparison, Stitched } from '../attempts/types.ts';
import type { Where } from '../errors.ts';
import type { ColumnSample } from '../log/columnSample.ts';
import type { FileKind } from '../log/fileKind.ts';
import type { ColumnChoice } from '../log/types.ts';
import type { TableCell } from '../plan/cellTable.ts';
import type { ReviewRequest } from '../review/readRequest.ts';
import type { Analysis } from '../review/types.ts';
import type { TextFile } from './book/types.ts';

/** A file as the page holds it: a handle, whose content only the worker reads. */
export interface FileHandle {
  readonly name: string;
  readonly blob: Blob;
}

/** Column choices that were made for logs with these headers. */
export interface RememberedColumns {
  readonly headers: readonly string[];
  readonly choices: readonly ColumnChoice[];
}

/** What a review is made from, as it crosses to the worker. */
export interface PageReviewRequest extends Omit<ReviewRequest, 'log' | 'map'> {
  readonly log: FileHandle;
  /** Names content that never changes, so that a log read once need not be read again. */
  readonly key?: string;
  /** The reader's own choice of columns; goes before what is remembered. */
  readonly map?: readonly ColumnChoice[];
  /** Taken when the log has these headers and `map` is absent. */
  readonly remembered?: readonly RememberedColumns[];
}

export interface ReviewResult {
  readonly analysis: Analysis;
  /** Every header of the log's table, in its order. */
  readonly headers: readonly string[];
  /** The table's columns as they stand in the file. */
  readonly columns: readonly ColumnSample[];
  /** Column choices that the log was read with. */
  readonly map: readonly ColumnChoice[];
}

/** Something that the reader of mission cards does not accept. */
export interface CardFault {
  /** `vehicle.stages[1].dryMass_kg`; empty for the text as a whole. */
  readonly field: string;
  /** What is wrong and what to do, one sentence. */
  readonly text: string;
  /** 1-based line of the text, where it is no JSON. */
  readonly row: number | null;
}

/** What the engine's own reader says of a mission card. */
export interface CardCheck {
  readonly faults: readonly CardFault[];
  readonly understood: readonly string[];
  readonly missing: readonly string[];
}

/** The ascent that leaves most delta-v, as a plan's file. */
export interface BestPlan {
  readonly plan: TextFile;
  readonly margin_m_s: number;
  readonly reachesTarget: boolean;
}

/** A plan as it stands in the editor: its cells, and the file that they make. */
export interface PlanSheetRequest {
  readonly plan: TextFile;
  readonly headers: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
}

/** Something that the reader of plans does not accept. */
export interface PlanFault {
  /** 1-based row of the table; null for the table as a whole. */
  readonly row: number | null;
  /** Header of the column; null for the whole row. */
  readonly column: string | null;
  /** What is wrong and what to do. */
  readonly text: string;
}

/** A plan's controls as the engine reads them; equal neighbours on the axis are a step. */
export interface PlanCurve {
  /** s, m or m/s. */
  readonly at: readonly number[];
  /** null where the plan says nothing of it. */
  readonly pitch_deg: readonly number[] | null;
  readonly throttle_percent: readonly number[] | null;
}

/** What the engine's own reader says of a plan. */
export interface PlanCheck {
  readonly faults: readonly PlanFault[];
  readonly understood: readonly string[];
  readonly missing: readonly string[];
  /** null while there are faults. */
  readonly curve: PlanCurve | null;
}

/** A plan of any form as a table of as many rows as a person can edit. */
export interface EditablePlan {
  readonly plan: TextFile;
  /** What was left out or taken for granted, one sentence each. */
  readonly notes: readonly string[];
}

export interface ComparisonRequest {
  readonly attempts: readonly Attempt[];
  readonly options: CompareOptions;
}

/** Groups whose best phases are to be put together, with what each flight is read from, by its name. */
export interface StitchRequest extends Pick<Comparison, 'groups' | 'rows'> {
  readonly flights: ReadonlyMap<string, PageReviewRequest>;
}

/** What the page can ask of its worker. A further task is one more line here and one in worker.ts. */
export interface Tasks {
  readonly review: { readonly request: PageReviewRequest; readonly result: ReviewResult };
  readonly kind: { readonly request: FileHandle; readonly result: FileKind };
  readonly card: { readonly request: TextFile; readonly result: CardCheck };
  /** The request is the mission card; its plan is named after the log. */
  readonly best: {
    readonly request: { readonly card: TextFile; readonly name: string };
    readonly result: BestPlan;
  };
  readonly checkPlan: { readonly request: PlanSheetRequest; readonly result: PlanCheck };
  /** A plan's file, with the card of the mission that it is for. */
  readonly editPlan: {
    readonly request: { readonly plan: FileHandle; readonly card: TextFile | null };
    readonly result: EditablePlan;
  };
  /** The controls of a flight as a plan. */
  readonly planOfFlight: { readonly request: PageReviewRequest; readonly result: EditablePlan };
  readonly attempt: { readonly request: PageReviewRequest; readonly result: Attempt };
  /** The best ascent of a flight's rocket as an attempt. */
  readonly bestAttempt: { readonly request: PageReviewRequest; readonly result: Attempt };
  readonly stitch: { readonly request: StitchRequest; readonly result: readonly Stitched[] };
  readonly compare: { readonly request: ComparisonRequest; readonly result: Comparison };
}

export type TaskName = keyof Tasks;

export interface Ask<T extends TaskName = TaskName> {
  readonly id: number;
  readonly task: T;
  readonly request: Tasks[T]['request'];
}

/** A failure in words, as it crosses from the worker. `code` is null for one that nobody foresaw. */
export interface Failure {
  readonly code: string | null;
  readonly what: string;
  readonly next: string;
  readonly where: Where;
  /** Headers of the log's table, where reading came so far. */
  readonly headers?: readonly string[];
  /** Its columns as they stand, where reading came so far. */
  readonly columns?: readonly ColumnSample[];
}

export type Reply =
  | { readonly id: number; readonly kind: 'progress'; readonly text: string; readonly share: number | null }
  | { readonly id: number; readonly kind: 'done'; readonly result: Tasks[TaskName]['result'] }
  | { readonly id: number; readonly kind: 'failed'; readonly failure: Failure };
