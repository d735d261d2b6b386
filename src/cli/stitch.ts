import { stitchAll } from '../attempts/stitchAll.ts';
import type { Comparison } from '../attempts/types.ts';
import { buildFlight } from '../flight/buildFlight.ts';
import { readRequest } from '../review/readRequest.ts';
import type { Asked } from './parseCommand.ts';
import { commonRequest, withRequest } from './reviewOne.ts';

/**
 * The comparison with the best phases of each group put together and flown. Their logs are read again; what came
 * by standard input cannot be.
 * @param pathOf path of each attempt, by its name
 */
export async function withStitched(
  comparison: Comparison,
  pathOf: ReadonlyMap<string, string>,
  asked: Asked,
): Promise<Comparison> {
  const stitched = await stitchAll(comparison, async (name) => {
    const path = pathOf.get(name);
    if (path === undefined || path === '-') return null;
    return withRequest(
      path,
      asked,
      commonRequest(asked),
      () => undefined,
      async (request) => {
        const { log, mission } = await readRequest(request);
        return buildFlight(log, mission);
      },
    );
  });
  return { ...comparison, stitched };
}
