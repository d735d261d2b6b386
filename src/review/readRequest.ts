import { type ByteSource, stretchOf } from '../log/byteSource.ts';
import { worldOfOem } from '../log/oemMark.ts';
import type { Centre } from '../log/oemTable.ts';
import { readLog } from '../log/readLog.ts';
import type { ColumnChoice, Log } from '../log/types.ts';
import { readMission } from '../mission/readCard.ts';
import type { Mission } from '../mission/types.ts';
import type { Plan } from '../plan/types.ts';
import { radiusAt_m } from '../world/radius.ts';

/** What a review is made from. Texts and bytes only, or a file that the caller opened: the engine opens none. */
export interface ReviewRequest {
  readonly log: { readonly name: string; readonly bytes: Uint8Array | ByteSource };
  /** Hears how far the log's reading has come, 0 to 1. */
  readonly onProgress?: (share: number) => void;
  readonly card?: { readonly name: string; readonly text: string };
  /** `earth`, `moon`, `mars`; over the card's. */
  readonly world?: string;
  /** Altitude of a circular target orbit, m; over the card's. */
  readonly targetAltitude_m?: number;
  readonly map?: readonly ColumnChoice[];
  /** 1-based flight in a file that holds several. */
  readonly part?: number;
  /** What the flight is compared with; its causes are then sought too. */
  readonly plan?: { readonly name: string; readonly bytes: Uint8Array };
  /** Also find what cost what by re-flying: seconds instead of a tenth of one. */
  readonly causes?: boolean;
}

/** What the request's files say. */
export interface ReadFiles {
  readonly mission: Mission;
  readonly log: Log;
  readonly plan: Plan | null;
}

/** Enough of a file to find the centre that an ephemeris names. */
const HEAD_BYTES = 65_536;

/** Reads card, log and plan, in the order in which each needs the one before. @throws LossbookError */
export async function readRequest(request: ReviewRequest): Promise<ReadFiles> {
  const { bytes } = request.log;
  const head = 'read' in bytes ? await stretchOf(bytes, 0, HEAD_BYTES) : bytes.subarray(0, HEAD_BYTES);
  const worldOfLog = worldOfOem(new TextDecoder().decode(head));
  const mission = readMission({
    ...(worldOfLog === null ? {} : { worldOfLog }),
    ...(request.card === undefined ? {} : { card: request.card }),
    ...(request.world === undefined ? {} : { world: request.world }),
    ...(request.targetAltitude_m === undefined ? {} : { targetAltitude_m: request.targetAltitude_m }),
  });
  const log = await readLog(bytes, {
    name: request.log.name,
    centre: centreOf(mission),
    ...(request.onProgress === undefined ? {} : { onProgress: request.onProgress }),
    ...(request.map === undefined ? {} : { map: request.map }),
    ...(request.part === undefined ? {} : { part: request.part }),
  });
  request.onProgress?.(1);
  // Few flights come with a plan: its reader is loaded with the first that does.
  const plan =
    request.plan === undefined
      ? null
      : await (await import('../plan/readPlan.ts')).readPlan(request.plan.bytes, request.plan.name, mission);
  return { mission, log, plan };
}

/** What turns the states of an ephemeris into altitudes and speeds over the ground. */
function centreOf({ world, site }: Mission): Centre {
  return {
    name: world.name,
    radius_m: radiusAt_m(world, 0, site.latitude_rad),
    spin_rad_s: world.spin_rad_s,
  };
}
