import { type UnitSetName, unitSets } from '../../units/unitSets.ts';
import { chooseUnits, unitSet } from '../units.ts';

/** Units for the whole page. */
export function UnitSwitch() {
  return (
    <select
      class="unit-switch"
      aria-label="Units"
      onChange={(event) => chooseUnits(event.currentTarget.value as UnitSetName)}
    >
      {(Object.keys(unitSets) as UnitSetName[]).map((name) => (
        <option key={name} value={name} selected={name === unitSet.value}>
          {unitSets[name].words}
        </option>
      ))}
    </select>
  );
}
