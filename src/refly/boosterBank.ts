import { STANDARD_GRAVITY_M_S2 } from '../units/standardGravity.ts';
import type { Motion } from './motion.ts';
import type { RocketBoosters } from './rocket.ts';

type Phase = 'waiting' | 'burning' | 'spent' | 'gone';

/** What a group of boosters does next. */
export interface BoosterChange {
  readonly name: 'booster-ignition' | 'booster-burnout' | 'booster-separation';
  readonly subject: string;
  /** Mass that leaves with it. */
  readonly dropped_kg: number;
}

/** What is due at the very beginning of a flight happens in it, s. */
const BEFORE_S = 1e-9;

/** The boosters beside one stage: they burn at full thrust, so all their times are known beforehand. */
export class BoosterBank {
  private readonly groups: readonly RocketBoosters[];
  private readonly empty_s: readonly number[];
  private readonly phases: Phase[];

  constructor(groups: readonly RocketBoosters[]) {
    this.groups = groups;
    this.empty_s = groups.map((g) => g.ignitionTime_s + g.propellantMass_kg / flow_kg_s(g));
    this.phases = groups.map(() => 'waiting');
  }

  /** The first change that is due by `time_s` and not yet made, now made; null when there is none. */
  due(time_s: number): BoosterChange | null {
    for (let i = 0; i < this.groups.length; i++) {
      if (this.changeTime_s(i) > time_s) continue;
      const group = this.groups[i]!;
      const subject = group.name;
      if (this.phases[i] === 'waiting') {
        this.phases[i] = 'burning';
        return { name: 'booster-ignition', subject, dropped_kg: 0 };
      }
      const away = group.separationTime_s ?? this.empty_s[i]!;
      if (this.phases[i] === 'burning' && this.empty_s[i]! <= away) {
        this.phases[i] = 'spent';
        return { name: 'booster-burnout', subject, dropped_kg: 0 };
      }
      const dropped_kg = this.groupMass_kg(i, time_s);
      this.phases[i] = 'gone';
      return { name: 'booster-separation', subject, dropped_kg };
    }
    return null;
  }

  /** Makes everything that was due before a flight began in the air. */
  begin(time_s: number): void {
    let made = this.due(time_s - BEFORE_S);
    while (made !== null) made = this.due(time_s - BEFORE_S);
  }

  /** Time from lift-off of the next change, s; infinite when there is none. */
  next_s(): number {
    let next = Number.POSITIVE_INFINITY;
    for (let i = 0; i < this.groups.length; i++) next = Math.min(next, this.changeTime_s(i));
    return next;
  }

  /** Mass of all that is still attached, kg. */
  mass_kg(time_s: number): number {
    let mass = 0;
    for (let i = 0; i < this.groups.length; i++) mass += this.groupMass_kg(i, time_s);
    return mass;
  }

  /** Tells the equations of motion what burns now. */
  give(motion: Motion): void {
    motion.boosterThrustVacuum_N = 0;
    motion.boosterFlow_kg_s = 0;
    motion.boosterExitArea_m2 = 0;
    this.groups.forEach((group, i) => {
      if (this.phases[i] !== 'burning') return;
      motion.boosterThrustVacuum_N += group.thrustVacuum_N;
      motion.boosterFlow_kg_s += flow_kg_s(group);
      motion.boosterExitArea_m2 += group.exitArea_m2;
    });
  }

  private changeTime_s(i: number): number {
    const group = this.groups[i]!;
    const away = group.separationTime_s ?? this.empty_s[i]!;
    switch (this.phases[i]!) {
      case 'waiting':
        return group.ignitionTime_s;
      case 'burning':
        return Math.min(this.empty_s[i]!, away);
      case 'spent':
        return away;
      case 'gone':
        return Number.POSITIVE_INFINITY;
    }
  }

  private groupMass_kg(i: number, time_s: number): number {
    const group = this.groups[i]!;
    const phase = this.phases[i]!;
    if (phase === 'gone') return 0;
    if (phase === 'waiting') return group.dryMass_kg + group.propellantMass_kg;
    return group.dryMass_kg + Math.max(0, this.empty_s[i]! - time_s) * flow_kg_s(group);
  }
}

function flow_kg_s(group: RocketBoosters): number {
  return group.thrustVacuum_N / (STANDARD_GRAVITY_M_S2 * group.ispVacuum_s);
}
