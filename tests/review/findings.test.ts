import { beforeAll, describe, expect, test } from 'vitest';
import type { Log } from '../../src/log/types.ts';
import type { Plan } from '../../src/plan/types.ts';
import type { FlightScript, StageScript } from '../../src/refly/flightScript.ts';
import { reflyWith, steeredProgram } from '../../src/refly/reflown.ts';
import {
  withGaps,
  withPayload,
  withPitchEarlier,
  withThrust,
  withTilt,
} from '../../src/refly/scriptEdits.ts';
import type { FindingCode } from '../../src/review/findings/types.ts';
import { reviewFlight, reviewLog } from '../../src/review/reviewFlight.ts';
import { cutLog, type ReferenceName, readCardText } from '../referenceFlights.ts';
import { type CleanFlight, changedLog, cleanFlight, flownLog } from './faultyFlights.ts';

/**
 * Flights with one fault each, made by flying the best ascent again with a change: the fault's finding comes first,
 * and costs what the re-flown difference is.
 */
const findingsOf = async (clean: CleanFlight, log: Log, plan: Plan | null) =>
  (await reviewLog(log, clean.mission, null, plan, true)).review.findings;

let osselby: CleanFlight;
let earth: CleanFlight;
beforeAll(() => {
  osselby = cleanFlight('osselby-nominal');
  earth = cleanFlight('earth-nominal');
}, 120_000);

const clean = (name: 'osselby' | 'earth') => (name === 'osselby' ? osselby : earth);

/** The script with its stages before the last edited. */
function lower({ base }: CleanFlight, edit: (stage: StageScript) => StageScript): FlightScript {
  const { script, last } = base;
  return { ...script, stages: script.stages.map((s, k) => (k < last ? edit(s) : s)) };
}

interface Fault {
  readonly code: FindingCode;
  readonly on: 'osselby' | 'earth';
  readonly change: (c: CleanFlight) => FlightScript;
  /** Reviewed against the clean flight as plan, or with nothing to compare with. */
  readonly plan: boolean;
}

const wavering = (c: CleanFlight) =>
  lower(c, (s) => ({
    ...s,
    pitch_rad: s.pitch_rad.map((p, i) => {
      const t = s.time_s[i]!;
      return t > 40 && t < 85 ? p + 0.3 * Math.sin(((t - 40) * 2 * Math.PI) / 15) : p;
    }),
  }));

const throttled = (c: CleanFlight) =>
  lower(c, (s) => ({
    ...s,
    throttle: s.throttle.map((t, i) => (s.time_s[i]! > 30 && s.time_s[i]! < 80 ? 0.7 : t)),
  }));

const hardKick = (c: CleanFlight) =>
  lower(c, (s) => ({
    ...s,
    pitch_rad: s.pitch_rad.map((p, i) => {
      const tilt = Math.PI / 2 - p;
      const since = s.time_s[i]! - 8;
      return since < 0 ? p : p - 0.5 * Math.exp(-since / 30) * Math.min(1, tilt / 0.02);
    }),
  }));

const faults: readonly Fault[] = [
  {
    code: 'pitch-over-late',
    on: 'earth',
    plan: true,
    change: ({ base }) => withPitchEarlier(base.script, base.last, -10),
  },
  {
    code: 'pitch-over-early',
    on: 'osselby',
    plan: true,
    change: ({ base }) => withPitchEarlier(base.script, base.last, 7),
  },
  {
    code: 'too-steep',
    on: 'osselby',
    plan: true,
    change: ({ base }) => withTilt(base.script, base.last, 0.85),
  },
  { code: 'too-flat', on: 'earth', plan: true, change: ({ base }) => withTilt(base.script, base.last, 1.15) },
  { code: 'pitch-over-too-hard', on: 'osselby', plan: true, change: hardKick },
  { code: 'angle-of-attack-in-air', on: 'osselby', plan: true, change: wavering },
  { code: 'throttle-down-long', on: 'earth', plan: true, change: throttled },
  { code: 'throttle-down-long', on: 'earth', plan: false, change: throttled },
  {
    code: 'stage-gap-long',
    on: 'earth',
    plan: true,
    change: ({ base }) => ({
      ...base.script,
      stages: base.script.stages.map((s, k) =>
        k === 0 ? s : { ...s, burns: s.burns.map((b) => ({ ...b, coast_s: b.coast_s + 20 })) },
      ),
    }),
  },
  {
    code: 'thrust-below-rating',
    on: 'earth',
    plan: false,
    change: ({ base }) => withThrust(base.script, 0, 0.93),
  },
];

describe('one fault each, its cost by re-flying', () => {
  test.each(faults)('$code on $on, with plan: $plan', async ({ code, on, plan, change }) => {
    const c = clean(on);
    const script = change(c);
    const truth = reflyWith(c.base, script)!.total_m_s - c.base.steered.total_m_s;
    expect(truth).toBeGreaterThan(5);
    const [first, ...rest] = await findingsOf(c, changedLog(c, script), plan ? c.plan : null);
    expect(first?.code).toBe(code);
    // The more special of several claims may take a share of it.
    expect(Math.abs(first!.cost_m_s.value! / truth - 1)).toBeLessThan(0.2);
    for (const other of rest) expect(other.cost_m_s.value!).toBeLessThan(0.3 * truth);
    expect(first!.advice.length).toBeGreaterThan(20);
    expect(first!.end_s).toBeGreaterThan(first!.start_s);
  });
});

describe('the last stage', () => {
  const flown = (c: CleanFlight, tangent: number, endTangent: number) => {
    const { tangent: a, endTangent: b } = c.base.steered;
    const program = steeredProgram(c.mission, c.base.script, {
      tangent: a + tangent,
      endTangent: b + endTangent,
      missing_m_s: null,
    })!;
    return flownLog(c.mission, c.base.script, program);
  };

  test('pitching up when the apoapsis is high enough', async () => {
    const [first] = await findingsOf(earth, flown(earth, 0.3, 0), earth.plan);
    expect(first?.code).toBe('pitch-up-at-apoapsis');
  });

  test('burning while coming down behind the apoapsis', async () => {
    const [first] = await findingsOf(earth, flown(earth, -0.3, 0), earth.plan);
    expect(first?.code).toBe('burn-past-apoapsis');
  });

  test.each([
    ['cutoff-early', -4],
    ['cutoff-late', 2],
  ] as const)('%s, without a plan', async (code, by_s) => {
    const { mission, base } = earth;
    const program = steeredProgram(mission, base.script, base.steered)!;
    const last = program.steps.at(-1)!;
    if (last.do === 'separate') throw new Error('a burn is last');
    const until = { kind: 'time', time_s: base.steered.time_s + by_s } as const;
    const log = flownLog(mission, base.script, {
      ...program,
      steps: [...program.steps.slice(0, -1), { ...last, until }],
    });
    const findings = await findingsOf(earth, log, null);
    expect(findings.map((f) => f.code)).toEqual([code]);
    // About 30 m/s each second at the end of the burn; what was burnt too long is to be undone as well.
    const stage = base.script.rocket.stages[base.last]!;
    const each = stage.thrustVacuum_N / base.steered.mass_kg;
    const truth = code === 'cutoff-early' ? 4 * each : 2 * 2 * each;
    expect(Math.abs(findings[0]!.cost_m_s.value! / truth - 1)).toBeLessThan(0.2);
  });
});

test('propellant dropped with a stage, by what it lowers the margin', async () => {
  const { base } = earth;
  const script = lower(earth, (s) => ({
    ...s,
    burns: s.burns.map((b) => ({ ...b, left_kg: 0.04 * base.script.rocket.stages[0]!.propellantMass_kg })),
  }));
  const end = reflyWith(base, script)!;
  const margin = (e: { left_m_s: number; toGo_m_s: number }) => e.left_m_s - e.toGo_m_s;
  const truth = margin(base.steered) - margin(end);
  for (const plan of [earth.plan, null]) {
    const [first] = await findingsOf(earth, changedLog(earth, script), plan);
    expect(first?.code).toBe('propellant-dropped');
    expect(Math.abs(first!.cost_m_s.value! / truth - 1)).toBeLessThan(0.2);
  }
});

test('propellant left aboard by a flight that fell short', async () => {
  const { base, mission } = earth;
  const program = steeredProgram(mission, base.script, base.steered)!;
  const last = program.steps.at(-1)!;
  if (last.do === 'separate') throw new Error('a burn is last');
  const until = { kind: 'time', time_s: base.handover.start.time_s + 100 } as const;
  // With three times the payload nothing reaches orbit, and the last stage is cut off in the middle of its burn.
  const script = withPayload(base.script, 24_000);
  const heavy = {
    ...mission,
    vehicle: { ...mission.vehicle!, payload_kg: mission.vehicle!.payload_kg! + 24_000 },
  };
  const log = flownLog(heavy, script, {
    ...program,
    steps: [...program.steps.slice(0, -1), { ...last, until }],
  });
  const { review } = await reviewLog(log, heavy, null, null, true);
  const found = review.findings.find((f) => f.code === 'propellant-left')!;
  expect(found.cost_m_s.value!).toBeCloseTo(review.budget.deltaVRemaining.value!, 6);
});

test('heavier than the card', async () => {
  const { base } = osselby;
  const script = withPayload(base.script, 400);
  const end = reflyWith(base, script)!;
  const truth = base.steered.left_m_s - base.steered.toGo_m_s - (end.left_m_s - end.toGo_m_s);
  const [first] = await findingsOf(osselby, changedLog(osselby, script), null);
  expect(first?.code).toBe('mass-above-card');
  expect(Math.abs(first!.cost_m_s.value! / truth - 1)).toBeLessThan(0.2);
});

test('a log that ends under thrust says with what it ends, and comes first', async () => {
  const { log } = earth;
  const rows = log.time.findIndex((t) => t > 70);
  const channels = Object.fromEntries(
    Object.entries(log.channels).map(([name, values]) => [name, values.subarray(0, rows)]),
  );
  const [first] = await findingsOf(earth, { ...log, time: log.time.subarray(0, rows), channels }, null);
  expect(first).toMatchObject({ code: 'log-ends-in-flight', cost_m_s: { value: null } });
  expect(first!.evidence).toMatch(/kPa of dynamic pressure.*load.*angle of attack/);
});

test('an upper stage too weak when it is lit falls back', async () => {
  const { base, mission } = earth;
  const script = withThrust(withTilt(base.script, base.last, 1.1), base.last, 0.6);
  const vehicle = {
    ...mission.vehicle!,
    stages: mission.vehicle!.stages.map((s, k) =>
      k === base.last ? { ...s, thrustVacuum_N: 0.6 * s.thrustVacuum_N! } : s,
    ),
  };
  const weak = { ...earth, mission: { ...mission, vehicle } };
  const codes = (await findingsOf(weak, changedLog(weak, script), null)).map((f) => f.code);
  expect(codes).toContain('upper-stage-underpowered');
  expect(codes).not.toContain('thrust-below-rating');
});

test('a stage under its rated specific impulse', async () => {
  const { base } = earth;
  const script: FlightScript = {
    ...base.script,
    rocket: {
      ...base.script.rocket,
      stages: base.script.rocket.stages.map((s, k) =>
        k === base.last
          ? { ...s, ispVacuum_s: 0.97 * s.ispVacuum_s, thrustVacuum_N: 0.97 * s.thrustVacuum_N }
          : s,
      ),
    },
  };
  const [first] = await findingsOf(earth, changedLog(earth, script), null);
  expect(first?.code).toBe('isp-below-rating');
  // 3 % of the upper stage's 6,814 m/s.
  expect(Math.abs(first!.cost_m_s.value! / (0.03 * 6814) - 1)).toBeLessThan(0.2);
});

test('more thrust than the air allows, against a plan that throttles', async () => {
  const bytes = (name: ReferenceName) => new TextEncoder().encode(cutLog(name));
  const { review } = await reviewFlight({
    log: { name: 'nominal.csv', bytes: bytes('osselby-nominal') },
    card: { name: 'card', text: readCardText('osselby-nominal') },
    plan: { name: 'throttled.csv', bytes: bytes('osselby-throttled') },
  });
  const part = review.againstPlan!.contributions.find((c) => c.group === 'throttle')!;
  const found = review.findings.find((f) => f.code === 'thrust-over-air')!;
  expect(found.cost_m_s.value!).toBeCloseTo(part.deltaV_m_s.value!, 6);
});

describe('the direction of launch', () => {
  const withCard = async (edit: (card: { site: object; target: object }) => void) => {
    const card = JSON.parse(readCardText('earth-nominal'));
    edit(card);
    const { review } = await reviewFlight({
      log: { name: 'x.csv', bytes: new TextEncoder().encode(cutLog('earth-nominal')) },
      card: { name: 'card', text: JSON.stringify(card) },
    });
    return review;
  };

  test('a plane beside the target’s', async () => {
    const { findings, orbit } = await withCard((card) => Object.assign(card.target, { inclination_deg: 35 }));
    const found = findings.find((f) => f.code === 'plane-error')!;
    // 2·V·sin(Δi/2) at 7,784 m/s.
    const off = ((35 - orbit.atCutoff.inclination_deg.value!) * Math.PI) / 180;
    expect(found.cost_m_s.value! / (2 * 7784 * Math.sin(off / 2))).toBeCloseTo(1, 3);
  });

  test('a launch to the north leaves the rotation unused', async () => {
    const { findings } = await withCard((card) => Object.assign(card.site, { launchAzimuth_deg: 0 }));
    const found = findings.find((f) => f.code === 'rotation-not-used')!;
    // ω·R·cos 28.5° = 408.7 m/s, of which a plane near the poles keeps next to nothing.
    expect(Math.abs(found.cost_m_s.value! - 408.7)).toBeLessThan(40);
  });
});

describe('clean flights have no finding', () => {
  test.each(['osselby', 'earth'] as const)('the best ascent of %s, with a plan and without', async (name) => {
    const c = clean(name);
    expect(await findingsOf(c, c.log, c.plan)).toEqual([]);
    expect(await findingsOf(c, c.log, null)).toEqual([]);
  });

  test('flown with other gaps than the shortest, as planned', async () => {
    const script = withGaps(earth.base.script, 3);
    const log = changedLog(earth, script);
    expect(await findingsOf(earth, log, null)).toEqual([]);
  });
});
