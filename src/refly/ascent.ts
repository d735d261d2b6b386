import type { World } from '../world/types.ts';
import { BoosterBank } from './boosterBank.ts';
import type { Program } from './controls.ts';
import { Dop853 } from './dop853.ts';
import type { FlightEvent, FlightProgram, FlightResult, FlightStep, Until } from './flightProgram.ts';
import type { FlightState } from './flightState.ts';
import { JettisonBank } from './jettisonBank.ts';
import type { MotionOptions } from './motion.ts';
import { bareSize, fullSize, Motion, place } from './motion.ts';
import type { Recorder } from './recorder.ts';
import type { Rocket, RocketJettison } from './rocket.ts';
import { fullMass_kg } from './rocket.ts';
import { nextThrustNode_s } from './solidMotor.ts';
import { startState } from './start.ts';
import { Watch } from './watch.ts';
import { Watchers } from './watchers.ts';

export interface AscentOptions extends MotionOptions {
  /** Carry the losses of METHODS §2 in the state; default true. Searches leave them out. */
  readonly carryLosses?: boolean;
  /** Of the local error, relative; default 1e-9. */
  readonly relativeTolerance?: number;
  /** Longest integration step, s; default 20. */
  readonly maxStep_s?: number;
}

/** A step whose end never comes is given up after this, s. */
const longestStep_s = 1e6;

/** Absolute tolerances: position 1e-4 m, velocity and losses 1e-7 m/s, masses 1e-5 kg. */
function tolerances(size: number): Float64Array {
  const t = new Float64Array(size).fill(1e-7);
  t.fill(1e-4, place.x, place.x + 3);
  t.fill(1e-5, place.mass, place.stagePropellant + 1);
  return t;
}

/**
 * Flies one rocket over one world, as often as asked, with what each flight program commands. Buffers are kept
 * from flight to flight; the integrator restarts at every switch, drop and jump of a program.
 */
export class Ascent {
  readonly world: World;
  readonly rocket: Rocket;
  readonly motion: Motion;
  private readonly solver: Dop853;
  private readonly y: Float64Array;
  private readonly rateScratch: Float64Array;
  private t = 0;
  private ground_m = 0;
  private events: FlightEvent[] = [];
  private boosters = new BoosterBank([]);
  private readonly jettisons: JettisonBank;
  private recorder: Recorder | null = null;
  private readonly condition = new Watch(() => 1, 0);
  private readonly empty = new Watch((s) => s.stagePropellant_kg, -1);
  private readonly ground = new Watch((s) => s.altitude_m - this.ground_m, -1, 1e-6);
  /** The air ends with a step in density; the integrator restarts there. */
  private readonly topOfAir: Watch;
  private readonly watchers: Watchers;

  constructor(world: World, rocket: Rocket, options: AscentOptions = {}) {
    this.world = world;
    this.rocket = rocket;
    this.motion = new Motion(world, options);
    const size = options.carryLosses === false ? bareSize : fullSize;
    this.solver = new Dop853(size, this.motion.rate, {
      relativeTolerance: options.relativeTolerance ?? 1e-9,
      absoluteTolerance: tolerances(size),
      maxStep: options.maxStep_s ?? 20,
    });
    this.y = new Float64Array(size);
    this.rateScratch = new Float64Array(size);
    const top_m = world.atmosphere?.top_m ?? 0;
    this.topOfAir = new Watch((s) => s.altitude_m - top_m, 0, 1e-6, true);
    this.topOfAir.active = world.atmosphere !== null;
    this.jettisons = new JettisonBank(rocket.jettisons);
    const watches = [this.condition, this.empty, this.ground, this.topOfAir, ...this.jettisons.overHeight];
    this.watchers = new Watchers(watches, this.solver, this.motion, size);
  }

  /** Flies a program to its end or to the ground; `recorder` takes samples on the way. */
  fly(program: FlightProgram, recorder: Recorder | null = null): FlightResult {
    this.prepare(program, recorder);
    let end: FlightResult['end'] = 'flown';
    if (program.start.kind === 'pad') end = this.liftOff(program.start.holdDown_s, program.steps[0]);
    for (const step of program.steps) {
      if (end !== 'flown') break;
      end = this.perform(step);
    }
    if (end === 'flown') this.shutDown();
    recorder?.finish(this.t, this.y, this.motion, this.rateScratch);
    return { end, time_s: this.t, state: this.y.slice(), events: this.events };
  }

  /** What the flight looks like at a time and state vector of it; valid until the next call. */
  observe(time_s: number, state: Float64Array): FlightState {
    return this.motion.observe(time_s, state, this.rateScratch);
  }

  private prepare(program: FlightProgram, recorder: Recorder | null): void {
    const { start } = program;
    const m = this.motion;
    this.events = [];
    this.recorder = recorder;
    m.controls = program.controls;
    m.lit = false;
    m.pinned = false;
    m.state.course_rad = start.course_rad;
    this.t = start.kind === 'pad' ? 0 - start.holdDown_s : start.time_s;
    this.solver.forgetStep();
    this.ground_m = start.kind === 'pad' ? start.altitude_m : (start.ground_m ?? 0);
    const flying = start.kind === 'flight';
    this.jettisons.begin(flying ? start : null);
    this.y.fill(0);
    startState(this.world, start, this.y);
    this.takeStage(flying ? start.stage : 0);
    if (flying) {
      this.boosters.begin(start.time_s);
      this.boosters.give(m);
    }
    this.y[place.mass] = flying ? start.mass_kg : fullMass_kg(this.rocket);
    if (flying) this.y[place.stagePropellant] = start.stagePropellant_kg;
  }

  private takeStage(index: number): void {
    const m = this.motion;
    const stage = this.rocket.stages[index];
    m.stage = index;
    this.y[place.stagePropellant] = stage?.propellantMass_kg ?? 0;
    this.boosters = new BoosterBank(stage?.boosters ?? []);
    this.boosters.give(m);
    if (stage === undefined) return;
    m.dragArea = stage.dragArea;
    m.ispVacuum_s = stage.ispVacuum_s;
    m.exitArea_m2 = stage.exitArea_m2;
    m.thrustVacuum_N = stage.thrustVacuum_N;
    m.thrustCurve = stage.thrustCurve;
  }

  private mark(name: FlightEvent['name'], subject: string | null): void {
    this.events.push({ name, time_s: this.t, subject, state: this.y.slice() });
  }

  private stageName(): string | null {
    return this.rocket.stages[this.motion.stage]?.name ?? null;
  }

  private ignite(): void {
    if (this.motion.lit) return;
    this.motion.lit = true;
    this.motion.ignition_s = this.t;
    this.mark('ignition', this.stageName());
  }

  private shutDown(): void {
    if (!this.motion.lit) return;
    this.mark('cutoff', this.stageName());
    this.motion.lit = false;
  }

  /** Engine lit (where the first step is a burn) and held down, then let go at time zero. */
  private liftOff(holdDown_s: number, first: FlightStep | undefined): FlightResult['end'] {
    if (first?.do === 'burn') this.ignite();
    if (holdDown_s > 0) {
      this.motion.pinned = true;
      const end = this.stretch({ kind: 'time', time_s: 0 });
      this.motion.pinned = false;
      if (end !== 'flown') return end;
    }
    this.mark('lift-off', null);
    return 'flown';
  }

  private perform(step: FlightStep): FlightResult['end'] {
    if (step.do === 'separate') {
      this.shutDown();
      this.separate();
      return 'flown';
    }
    if (step.controls !== undefined) this.motion.controls = step.controls;
    if (step.do === 'coast') this.shutDown();
    else {
      if (this.y[place.stagePropellant]! <= 0) return 'flown';
      this.ignite();
    }
    return this.stretch(step.until);
  }

  private separate(): void {
    this.mark('separation', this.stageName());
    const stage = this.rocket.stages[this.motion.stage];
    this.drop((stage?.dryMass_kg ?? 0) + this.y[place.stagePropellant]! + this.boosters.mass_kg(this.t));
    this.takeStage(this.motion.stage + 1);
  }

  private drop(mass_kg: number): void {
    this.y[place.mass] = this.y[place.mass]! - mass_kg;
  }

  /** Does what is due by now; returns the time of the next thing to do. */
  private settle(): number {
    const m = this.motion;
    for (let due = this.boosters.due(this.t); due !== null; due = this.boosters.due(this.t)) {
      this.mark(due.name, due.subject);
      this.drop(due.dropped_kg);
      this.boosters.give(m);
    }
    for (let part = this.jettisons.due(this.t); part !== null; part = this.jettisons.due(this.t))
      this.throwOff(part);
    let next = Math.min(this.boosters.next_s(), this.jettisons.next_s());
    for (const program of [m.controls?.throttle, m.controls?.pitch, m.controls?.heading])
      next = Math.min(next, nextBreak(program, this.t));
    return next;
  }

  private throwOff(part: RocketJettison): void {
    this.mark('jettison', part.name);
    this.drop(part.mass_kg);
  }

  /** Next kink of a solid motor's thrust, s from lift-off; its last one ends the burn. */
  private nextThrustNode_s(): number {
    const { lit, thrustCurve, ignition_s } = this.motion;
    if (!lit || thrustCurve === null) return Number.POSITIVE_INFINITY;
    // Counted from a moment later, so that rounding does not find the same node twice.
    return ignition_s + nextThrustNode_s(thrustCurve, this.t - ignition_s + 1e-9);
  }

  /** Integrates from switch to switch until the step's end. */
  private stretch(until: Until): FlightResult['end'] {
    const begun = this.t;
    this.motion.stepped_s = begun;
    const stop =
      until.kind === 'time'
        ? until.time_s
        : until.kind === 'duration'
          ? begun + until.duration_s
          : begun + longestStep_s;
    const m = this.motion;
    this.condition.active = until.kind === 'condition';
    if (until.kind === 'condition') {
      this.condition.measure = until.value;
      this.condition.direction = until.direction;
    }
    for (;;) {
      const next = this.settle();
      if (this.t >= stop) return until.kind === 'time' || until.kind === 'duration' ? 'flown' : 'stalled';
      const node_s = this.nextThrustNode_s();
      if (m.lit && m.thrustCurve !== null && node_s === Number.POSITIVE_INFINITY) {
        this.shutDown();
        return 'flown';
      }
      const limit = Math.min(stop, next, node_s);
      m.stretchStart_s = this.t;
      m.stretchEnd_s = limit - 1e-9 * Math.max(1, Math.abs(limit));
      this.empty.active = m.lit;
      this.ground.active = !m.pinned;
      this.jettisons.watch();
      this.solver.restart(this.t, this.y);
      const happened = this.watchers.integrate(limit, this.y, this.recorder);
      if (happened === 'stalled') return 'stalled';
      this.t = this.watchers.time;
      if (happened === 'limit') continue;
      if (happened === this.condition) return 'flown';
      if (happened === this.empty) {
        this.y[place.stagePropellant] = 0;
        this.shutDown();
        return 'flown';
      }
      if (happened === this.ground) {
        this.shutDown();
        this.mark('touchdown', null);
        return 'impact';
      }
      const part = this.jettisons.passed(happened);
      if (part !== null) this.throwOff(part);
    }
  }
}

function nextBreak(program: Program | undefined, after_s: number): number {
  for (const b of program?.breaks_s ?? []) if (b > after_s) return b;
  return Number.POSITIVE_INFINITY;
}
