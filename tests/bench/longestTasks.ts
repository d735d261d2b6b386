interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** µs */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

interface Task {
  readonly length_ms: number;
  /** Before the last task of the trace, s. */
  readonly beforeEnd_s: number;
}

/** The longest tasks of pages' main threads by those threads' own time, longest first. */
export function longestTasks(trace: Buffer): Task[] {
  const { traceEvents } = JSON.parse(trace.toString()) as { traceEvents: readonly TraceEvent[] };
  const main = new Set(
    traceEvents
      .filter((e) => e.name === 'thread_name' && e.args?.name === 'CrRendererMain')
      .map((e) => `${e.pid} ${e.tid}`),
  );
  // What a promise goes on with is run after a task, in an event of its own.
  const tasks = traceEvents.filter(
    (e) => /RunTask$|PerformMicrotaskCheckpoint$/.test(e.name) && main.has(`${e.pid} ${e.tid}`),
  );
  const end = tasks.reduce((last, e) => Math.max(last, e.ts), 0);
  return tasks
    .map((e) => ({ length_ms: (e.tdur ?? e.dur ?? 0) / 1000, beforeEnd_s: (end - e.ts) / 1e6 }))
    .sort((a, b) => b.length_ms - a.length_ms)
    .slice(0, 6);
}
