import type { Where } from '../errors.ts';
import type { ReviewRequest } from '../review/reviewFlight.ts';
import type { Analysis } from '../review/types.ts';

/** What the page can ask of its worker. A further task is one more line here and one in worker.ts. */
export interface Tasks {
  readonly review: { readonly request: ReviewRequest; readonly result: Analysis };
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
}

export type Reply =
  | { readonly id: number; readonly kind: 'progress'; readonly text: string }
  | { readonly id: number; readonly kind: 'done'; readonly result: Tasks[TaskName]['result'] }
  | { readonly id: number; readonly kind: 'failed'; readonly failure: Failure };
