import type { Flight } from '../../flight/types.ts';
import { type AscentSpan, orbitAt } from '../../ledger/ascentEnd.ts';
import { figure, unavailable } from '../figure.ts';
import { orbitFigures } from '../orbitFigures.ts';
import type { Figure } from '../types.ts';
import type { OrbitHistoryRow, OrbitWork } from './types.ts';

/** Burns after the ascent that begin in orbit, weighed, and the history of the orbit. */
export async function orbitWork(flight: Flight, span: AscentSpan): Promise<OrbitWork> {
  const { world } = flight.mission;
  const floor = world.radius_m + world.orbitFloor_m;
  const inOrbit = (i: number): boolean => orbitAt(flight, i).periapsisRadius_m >= floor;
  const reached = span.isCutoff && inOrbit(span.end);
  const begun = flight.startsInFlight && inOrbit(0);
  const works = flight.burns.filter(
    (b) => (begun || b.startIndex > span.end) && !b.endsAfterLog && inOrbit(b.startIndex),
  );
  if (!reached && works.length === 0) return nothing;
  // Weighing is loaded with the first flight that worked in orbit.
  const weigh = works.length === 0 ? null : (await import('./weighedWork.ts')).weighedWork;
  const burns = weigh === null ? [] : works.map((burn) => weigh(flight, burn));
  const history: OrbitHistoryRow[] = [
    reached && !begun
      ? { time_s: flight.time[span.end]!, after: 'ascent', orbit: orbitFigures(flight, span.end) }
      : { time_s: flight.time[0]!, after: 'start of the log', orbit: orbitFigures(flight, 0) },
    ...works.map((burn, k) => ({
      time_s: burn.end_s,
      after: burns[k]!.kind,
      orbit: orbitFigures(flight, burn.endIndex),
    })),
  ];
  return {
    burns,
    history,
    deltaV_m_s: sumOf(burns.map((b) => b.deltaV_m_s)),
    optimum_m_s: sumOf(burns.map((b) => b.optimum_m_s)),
  };
}

const nothing: OrbitWork = {
  burns: [],
  history: [],
  deltaV_m_s: unavailable('the log holds no burns in orbit'),
  optimum_m_s: unavailable('the log holds no burns in orbit'),
};

/** Sum of figures; unavailable where one is. */
function sumOf(figures: readonly Figure[]): Figure {
  let [value, square] = [0, 0];
  for (const f of figures) {
    if (f.value === null) return unavailable(f.reason ?? 'a part is not known');
    value += f.value;
    square += ((f.high! - f.low!) / 3.92) ** 2;
  }
  return figures.length === 0
    ? unavailable('the log holds no burns in orbit')
    : figure(value, Math.sqrt(square), 'derived');
}
