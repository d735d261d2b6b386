import type { Figure, Review } from '../review/types.ts';
import { ledgerOrder } from './ledgerOrder.ts';

const orbitNames = {
  apoapsisAltitude_m: 'apoapsis',
  periapsisAltitude_m: 'periapsis',
  eccentricity: 'eccentricity',
  inclination_deg: 'inclination',
  semiMajorAxis_m: 'semi-major axis',
  period_s: 'period',
} as const;

const budgetNames = {
  deltaVSpent: 'delta-v spent',
  deltaVToGo: 'delta-v to go',
  deltaVRemaining: 'delta-v remaining',
  vehicleDeltaV: 'vehicle’s delta-v',
  projectedTotal: 'projected total',
  margin: 'margin',
  shortfall: 'shortfall',
} as const;

/** What could not be derived, one sentence for each reason: "drag, steering: no mass in the log". */
export function unavailableTexts(review: Review): string[] {
  const names = new Map<string, Set<string>>();
  for (const [name, figure] of figuresOf(review)) {
    if (figure.basis !== 'unavailable') continue;
    const reason = figure.reason ?? 'no reason was recorded';
    names.set(reason, (names.get(reason) ?? new Set()).add(name));
  }
  return [...names].map(([reason, which]) => `${[...which].join(', ')}: ${reason}`);
}

function* figuresOf(review: Review): Generator<readonly [string, Figure]> {
  const { ground, inertial, rotationHelp } = review.ledger;
  for (const [key, name] of ledgerOrder) {
    yield [name, ground[key]];
    // The inertial frame has no frame entry by definition: nothing is missing there.
    if (key !== 'frame')
      yield [ground[key].basis === 'unavailable' ? name : `${name} (inertial)`, inertial[key]];
  }
  yield ['rotation’s help', rotationHelp];
  for (const [key, name] of Object.entries(budgetNames)) {
    yield [name, review.budget[key as keyof typeof budgetNames]];
  }
  for (const [key, name] of Object.entries(orbitNames)) {
    yield [name, review.orbit.atCutoff[key as keyof typeof orbitNames]];
  }
  for (const burn of review.burns) {
    yield ['a burn’s delta-v', burn.deltaV];
    // Burns after the ascent are weighed as work in orbit.
    if (burn.ascent) yield ['a burn’s efficiency', burn.efficiency];
    yield ['a burn’s propellant', burn.propellant_kg];
  }
}
