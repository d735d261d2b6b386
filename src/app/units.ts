import { computed, signal } from '@preact/signals';
import { type ShownIn, type UnitSetName, unitSets, unitsOf } from '../units/unitSets.ts';
import { browserStorage } from './browserStorage.ts';

const kept = 'lossbook-units';

function keptSet(): UnitSetName {
  const name = browserStorage()?.getItem(kept) ?? '';
  return Object.hasOwn(unitSets, name) ? (name as UnitSetName) : 'km';
}

/** The units that figures are shown in: a choice for the whole page. Data that are saved stay SI. */
export const unitSet = signal<UnitSetName>(keptSet());

const units = computed(() => unitsOf(unitSet.value));

export function chooseUnits(name: UnitSetName): void {
  unitSet.value = name;
  try {
    browserStorage()?.setItem(kept, name);
  } catch {
    // A browser that keeps nothing still shows them for this visit.
  }
}

/** A unit and scale of the engine in the units chosen (see `ShownUnits`). */
export function shownIn(unit: string, scale: number, place: 'length' | 'chart' = 'length'): ShownIn {
  return units.value.shownIn(unit, scale, place);
}

/** The unit that speeds and delta-v are shown in, and how many of it are one m/s. */
export function speedIn(): ShownIn {
  return shownIn('m/s', 1);
}

/** The unit that altitudes are shown in, and how many of it are one metre. */
export function altitudeIn(): ShownIn {
  return shownIn('km', 1e-3);
}

/** A sentence of the engine with its lengths and speeds in the units chosen. */
export function inUnits(text: string): string {
  return units.value.text(text);
}
