import type { Mission } from '../mission/types.ts';
import { orbitFromPlanarState } from '../orbit/planar.ts';
import type { ChangeKind } from './changeKind.ts';
import type { FlightScript } from './flightScript.ts';
import type { Insertion } from './lastStage.ts';
import { type ReflownFlight, reflyWith } from './reflown.ts';
import { withPayload, withPitchEarlier, withTilt } from './scriptEdits.ts';

/** A change of one thing, by re-flying just large enough to reach orbit. */
export interface SingleChange {
  readonly kind: ChangeKind;
  /** s, a factor less 1 for tilts, kg; 0 where the change has no size; the moment of `turn-in-time`, s. */
  readonly amount: number;
  /** Only of `turn-in-time`: how far the nose is led under the path at first. */
  readonly lead_rad?: number;
  /** How it ends, and how it ends with nine tenths of the change. */
  readonly end: Insertion;
  readonly nineTenths: Insertion | null;
}

/** Apsides above the surface at an insertion, m. */
export function apsidesOf(
  { world }: Mission,
  end: Insertion,
): { readonly apoapsisAltitude_m: number; readonly periapsisAltitude_m: number } {
  const orbit = orbitFromPlanarState(
    world.mu_m3_s2,
    end.radius_m,
    end.radialSpeed_m_s,
    end.tangentialSpeed_m_s,
  );
  return {
    apoapsisAltitude_m: orbit.apoapsisRadius_m - world.radius_m,
    periapsisAltitude_m: orbit.periapsisRadius_m - world.radius_m,
  };
}

/** Propellant left less what is to go, m/s: the margin of a flight at its end. */
export function marginOf(end: Insertion): number {
  return end.left_m_s - end.toGo_m_s;
}

/** In orbit: its periapsis is not under the orbit floor. */
export function reachesOrbit(mission: Mission, end: Insertion | null): end is Insertion {
  return end !== null && apsidesOf(mission, end).periapsisAltitude_m >= mission.world.orbitFloor_m;
}

/** A family of changes, from none to the largest that is tried. */
interface Family {
  readonly kind: ChangeKind;
  readonly most: number;
  readonly edit: (base: ReflownFlight, amount: number) => FlightScript;
}

function families(base: ReflownFlight): Family[] {
  const { last, script } = base;
  const over_s = script.stages[0]!.time_s.find(
    (_, i) => Math.PI / 2 - script.stages[0]!.pitch_rad[i]! > Math.PI / 180,
  );
  return [
    {
      kind: 'pitch-earlier',
      most: Math.max(0, (over_s ?? 0) - 2),
      edit: (b, x) => withPitchEarlier(b.script, last, x),
    },
    { kind: 'more-tilt', most: 0.6, edit: (b, x) => withTilt(b.script, last, 1 + x) },
    { kind: 'less-tilt', most: 0.5, edit: (b, x) => withTilt(b.script, last, 1 - x) },
    { kind: 'less-payload', most: 0.9 * script.rocket.payload_kg, edit: (b, x) => withPayload(b.script, -x) },
  ];
}

/** Shares of the largest change that are tried before the search closes in. */
const LADDER = [0.1, 0.25, 0.5, 1];
const CLOSING = 9;

/**
 * For each kind of change the smallest that would have reached orbit, proved by flying it (METHODS §7, the last
 * stage steered anew each time). Empty where none of them does.
 */
export function smallestChanges(base: ReflownFlight): SingleChange[] {
  const { mission } = base;
  if (reachesOrbit(mission, base.steered))
    return [{ kind: 'steer-last-stage', amount: 0, end: base.steered, nineTenths: null }];
  const out: SingleChange[] = [];
  for (const family of families(base)) {
    const fly = (amount: number): Insertion | null => reflyWith(base, family.edit(base, amount));
    const start = marginOf(base.steered);
    let low = 0;
    let high = Number.NaN;
    let end: Insertion | null = null;
    for (const share of LADDER) {
      const amount = share * family.most;
      const tried = amount > 0 ? fly(amount) : null;
      if (tried === null) break;
      if (reachesOrbit(mission, tried)) {
        high = amount;
        end = tried;
        break;
      }
      // A change that makes it worse from the start is none.
      if (share === LADDER[0] && marginOf(tried) < start) break;
      low = amount;
    }
    if (end === null) continue;
    for (let k = 0; k < CLOSING && high - low > 0.01 * high; k++) {
      const middle = (low + high) / 2;
      const tried = fly(middle);
      if (reachesOrbit(mission, tried)) {
        high = middle;
        end = tried;
      } else low = middle;
    }
    out.push({ kind: family.kind, amount: high, end, nineTenths: fly(0.9 * high) });
  }
  return out;
}
