import type { Quantity } from '../../units/quantity.ts';

/** One entry of the form. */
export interface CardField {
  readonly key: string;
  readonly label: string;
  readonly unit?: string;
  /** Shown value = card's value × scale. */
  readonly scale?: number;
  readonly quantity?: Quantity;
  readonly kind?: 'text' | 'curve' | 'lines';
  /** What holds when it is left empty, or how it is written. */
  readonly note?: string;
  readonly wide?: boolean;
}

const km = { unit: 'km', scale: 1e-3, quantity: 'length' } as const;
const kg = { unit: 'kg', quantity: 'mass' } as const;
const kN = { unit: 'kN', scale: 1e-3, quantity: 'force' } as const;
const s = { unit: 's', quantity: 'time' } as const;
const degree = { unit: '°' } as const;
const text = { kind: 'text' } as const;

export const orbitFields: readonly CardField[] = [
  { key: 'apoapsisAltitude_m', label: 'Apoapsis altitude', ...km, note: 'left empty: circular' },
  { key: 'periapsisAltitude_m', label: 'Periapsis altitude', ...km, note: 'left empty: circular' },
  {
    key: 'tolerance_m',
    label: 'Met within',
    ...km,
    note: 'left empty: 5 % of the altitude, 1 km at least',
  },
  { key: 'inclination_deg', label: 'Inclination', ...degree, note: 'left empty: any' },
];

export const orbitMore: readonly CardField[] = [
  { key: 'argumentOfPeriapsis_deg', label: 'Argument of periapsis', ...degree, note: 'left empty: any' },
  { key: 'ascendingNode_deg', label: 'Ascending node', ...degree, note: 'left empty: any' },
];

export const peakFields: readonly CardField[] = [
  { key: 'peakAltitude_m', label: 'Peak altitude', ...km, note: 'needed' },
  {
    key: 'tolerance_m',
    label: 'Met within',
    ...km,
    note: 'left empty: 5 % of the altitude, 1 km at least',
  },
];

export const escapeFields: readonly CardField[] = [
  { key: 'c3_m2_s2', label: 'C3', unit: 'km²/s²', scale: 1e-6, note: 'left empty: 0, just escaping' },
];

export const siteFields: readonly CardField[] = [
  { key: 'latitude_deg', label: 'Latitude', ...degree, note: 'left empty: 0, the equator' },
  { key: 'launchAzimuth_deg', label: 'Launch azimuth', ...degree, note: 'left empty: 90, due east' },
  { key: 'longitude_deg', label: 'Longitude', ...degree, note: 'east; left empty: 0' },
  { key: 'altitude_m', label: 'Altitude', unit: 'm', quantity: 'length', note: 'left empty: 0' },
];

export const vehicleFields: readonly CardField[] = [
  { key: 'name', label: 'Vehicle', ...text },
  { key: 'payload_kg', label: 'Payload', ...kg, note: 'what the last stage carries' },
];

export const stageFields: readonly CardField[] = [
  { key: 'name', label: 'Name', ...text },
  { key: 'propellantMass_kg', label: 'Propellant', ...kg },
  { key: 'dryMass_kg', label: 'Dry mass', ...kg, note: 'without propellant and what is above' },
  { key: 'thrustVacuum_N', label: 'Thrust in vacuum', ...kN, note: 'all engines together' },
  { key: 'ispVacuum_s', label: 'Isp in vacuum', ...s },
  { key: 'ispSeaLevel_s', label: 'Isp at sea level', ...s, note: 'or the exit area' },
];

export const stageMore: readonly CardField[] = [
  { key: 'exitArea_m2', label: 'Exit area', unit: 'm²', note: 'all engines together' },
  { key: 'referenceArea_m2', label: 'Reference area', unit: 'm²', note: 'of the whole stack' },
  {
    key: 'dragCoefficient',
    label: 'Drag coefficient',
    kind: 'curve',
    wide: true,
    note: 'a number, or Mach and coefficient: 0 0.3; 1.05 0.55; 4 0.25',
  },
  { key: 'engines', label: 'Engines', note: 'left empty: 1' },
  {
    key: 'throttleMin',
    label: 'Lowest throttle',
    unit: '%',
    scale: 100,
    note: 'left empty: cannot throttle',
  },
  { key: 'ignitions', label: 'Ignitions', note: 'left empty: any number' },
  {
    key: 'thrustCurve',
    label: 'Thrust curve',
    kind: 'curve',
    wide: true,
    note: 'solid motors: seconds and newtons, 0 0; 0.2 15000; 4 12000; 5 0',
  },
];

export const boosterFields: readonly CardField[] = [
  { key: 'name', label: 'Name', ...text },
  { key: 'count', label: 'How many', note: 'left empty: 1' },
  { key: 'propellantMass_kg', label: 'Propellant', ...kg, note: 'of each; needed' },
  { key: 'dryMass_kg', label: 'Dry mass', ...kg, note: 'of each; needed' },
  { key: 'thrustVacuum_N', label: 'Thrust in vacuum', ...kN, note: 'of each; needed' },
  { key: 'ispVacuum_s', label: 'Isp in vacuum', ...s, note: 'needed' },
  { key: 'exitArea_m2', label: 'Exit area', unit: 'm²', note: 'of each; left empty: 0' },
  { key: 'ignitionTime_s', label: 'Lit at', ...s, note: 'from lift-off; left empty: 0' },
  { key: 'separationTime_s', label: 'Dropped at', ...s, note: 'left empty: when empty' },
];

export const jettisonFields: readonly CardField[] = [
  { key: 'name', label: 'Name', ...text },
  { key: 'mass_kg', label: 'Mass', ...kg, note: 'needed' },
  { key: 'time_s', label: 'Dropped at', ...s, note: 'from lift-off' },
  { key: 'altitude_m', label: 'or at altitude', ...km },
];

export const limitFields: readonly CardField[] = [
  { key: 'dynamicPressure_Pa', label: 'Dynamic pressure', unit: 'kPa', scale: 1e-3, quantity: 'pressure' },
  { key: 'acceleration_m_s2', label: 'Acceleration', unit: 'm/s²', quantity: 'acceleration' },
  { key: 'angleOfAttackInAir_deg', label: 'Angle of attack in air', ...degree },
];

export const returnFields: readonly CardField[] = [
  { key: 'mass_kg', label: 'Mass', ...kg },
  { key: 'referenceArea_m2', label: 'Reference area', unit: 'm²' },
  { key: 'dragCoefficient', label: 'Drag coefficient' },
  { key: 'noseRadius_m', label: 'Nose radius', unit: 'm', quantity: 'length', note: 'for the heating' },
];

export const parachuteFields: readonly CardField[] = [
  { key: 'count', label: 'How many', note: 'left empty: 1' },
  { key: 'dragArea_m2', label: 'Drag area', unit: 'm²', note: 'of each; needed' },
  { key: 'openAltitude_m', label: 'Opens at', ...km },
  { key: 'fullAltitude_m', label: 'Full at', ...km },
];

export const flightFields: readonly CardField[] = [
  { key: 'pilot', label: 'Pilot', ...text },
  { key: 'attempt', label: 'Attempt' },
  { key: 'date', label: 'Date', ...text },
  { key: 'notes', label: 'Notes', kind: 'lines', wide: true },
];

export const worldFields: readonly CardField[] = [
  { key: 'name', label: 'Name', ...text },
  { key: 'radius_m', label: 'Radius', ...km, note: 'needed' },
  { key: 'surfaceGravity_m_s2', label: 'Surface gravity', unit: 'm/s²', note: 'this or GM' },
  { key: 'gravitationalParameter_m3_s2', label: 'GM', unit: 'm³/s²' },
  { key: 'rotationPeriod_s', label: 'Turns once in', ...s, note: 'left empty: does not turn' },
  { key: 'orbitFloor_m', label: 'Orbit floor', ...km, note: 'left empty: the top of the air' },
];

export const airFields: readonly CardField[] = [
  { key: 'surfacePressure_Pa', label: 'Surface pressure', unit: 'kPa', scale: 1e-3, note: 'needed' },
  { key: 'surfaceDensity_kg_m3', label: 'Surface density', unit: 'kg/m³', note: 'needed' },
  { key: 'scaleHeight_m', label: 'Scale height', ...km, note: 'needed' },
  { key: 'top_m', label: 'Top of the air', ...km },
  { key: 'heatCapacityRatio', label: 'Heat capacity ratio', note: 'left empty: 1.4' },
];

export const airTableFields: readonly CardField[] = [
  {
    key: 'rows',
    label: 'Rows',
    kind: 'curve',
    wide: true,
    note: 'altitude in m, pressure in Pa, density in kg/m³: 0 80000 1.1; 5000 43000 0.6; 90000 0.1 1e-6',
  },
  { key: 'top_m', label: 'Top of the air', ...km },
  { key: 'heatCapacityRatio', label: 'Heat capacity ratio', note: 'left empty: 1.4' },
];
