/**
 * The U.S. Standard Atmosphere, 1976 (NOAA-S/T 76-1562, NASA-TM-X-74335) from 86 to 1000 km geometric: the
 * number densities of six gases by the standard's own integrals (part 1, eqs. 25 to 45), summed once into a
 * table of ln p and ln ρ that is read by linear interpolation in the logarithm. Inside this file altitudes are
 * in km, as in the standard's tables of constants; everything that leaves it is SI.
 */

/** Universal gas constant of the standard, J/(kmol K), and its Avogadro number, 1/kmol. */
const GAS_CONSTANT = 8314.32;
const AVOGADRO = 6.022169e26;
const BOLTZMANN = 1.380622e-23;
const EARTH_RADIUS_KM = 6356.766;
const GRAVITY_M_S2 = 9.80665;
const MEAN_MOLAR_MASS_SEA_LEVEL = 28.9644;

export const UPPER_BASE_KM = 86;
const UPPER_TOP_KM = 1000;
const BASE_TEMPERATURE_K = 186.8673;
const EXOSPHERE_TEMPERATURE_K = 1000;

/** Gases in the order of integration, with kg/kmol, number per m³ at 86 km and diffusion constants (table 6). */
interface Gas {
  readonly molarMass: number;
  readonly baseNumber: number;
  /** Thermal diffusion factor α. */
  readonly thermal: number;
  /** Molecular diffusion D = a/N·(T/273.15)^b, a in 1/(m s). */
  readonly a: number;
  readonly b: number;
  /** Vertical transport (table 7): Q, q in km⁻³, U, u in km, W, w in km⁻³. */
  readonly transport: readonly [Q: number, U: number, W: number, q: number, u: number, w: number];
}
const nitrogen = { molarMass: 28.0134, baseNumber: 1.129794e20 };
const atomicOxygen: Gas = {
  molarMass: 15.9994,
  baseNumber: 8.6e16,
  thermal: 0,
  a: 6.986e20,
  b: 0.75,
  transport: [-5.809644e-4, 56.90311, 2.70624e-5, -3.416248e-3, 97, 5.008765e-4],
};
const oxygen: Gas = {
  molarMass: 31.9988,
  baseNumber: 3.030898e19,
  thermal: 0,
  a: 4.863e20,
  b: 0.75,
  transport: [1.366212e-4, 86, 8.333333e-5, 0, 0, 0],
};
const argon: Gas = {
  molarMass: 39.948,
  baseNumber: 1.3514e18,
  thermal: 0,
  a: 4.487e20,
  b: 0.87,
  transport: [9.434079e-5, 86, 8.333333e-5, 0, 0, 0],
};
const helium: Gas = {
  molarMass: 4.0026,
  baseNumber: 7.5817e14,
  thermal: -0.4,
  a: 1.7e21,
  b: 0.691,
  transport: [-2.457369e-4, 86, 6.666667e-4, 0, 0, 0],
};
/** Hydrogen counts from 150 km up and is tied to its number at 500 km; upward flux in 1/(m² s) (table 3). */
const hydrogen = {
  molarMass: 1.00797,
  numberAt500km: 8e10,
  thermal: -0.25,
  a: 3.305e21,
  b: 0.5,
  flux: 7.2e11,
};
const HYDROGEN_FROM_KM = 150;
const HYDROGEN_LEVEL_KM = 500;

/** Kinetic temperature, K, at a geometric altitude of 86 to 1000 km (eqs. 25, 27, 29, 31). */
export function upperTemperature_K(z_km: number): number {
  if (z_km <= 91) return BASE_TEMPERATURE_K;
  if (z_km <= 110) return 263.1905 - 76.3232 * Math.sqrt(1 - ((z_km - 91) / 19.9429) ** 2);
  if (z_km <= 120) return 240 + 12 * (z_km - 110);
  const xi = ((z_km - 120) * (EARTH_RADIUS_KM + 120)) / (EARTH_RADIUS_KM + z_km);
  return EXOSPHERE_TEMPERATURE_K - (EXOSPHERE_TEMPERATURE_K - 360) * Math.exp(-0.01875 * xi);
}

/** dT/dz, K/km (eqs. 26, 28, 30, 32). */
function temperatureSlope(z: number): number {
  if (z <= 91) return 0;
  if (z <= 110) {
    const s = (z - 91) / 19.9429;
    return ((76.3232 / 19.9429) * s) / Math.sqrt(1 - s * s);
  }
  if (z <= 120) return 12;
  const k = (EARTH_RADIUS_KM + 120) / (EARTH_RADIUS_KM + z);
  return 0.01875 * (EXOSPHERE_TEMPERATURE_K - 360) * k * k * Math.exp(-0.01875 * (z - 120) * k);
}

/** Gravity at 45° latitude, m/s² (eq. 17). */
function gravity(z: number): number {
  return GRAVITY_M_S2 * (EARTH_RADIUS_KM / (EARTH_RADIUS_KM + z)) ** 2;
}

/** Eddy diffusion, m²/s (eqs. 7a to 7c). */
function eddyDiffusion(z: number): number {
  if (z < 95) return 120;
  return z < 115 ? 120 * Math.exp(1 - 400 / (400 - (z - 95) ** 2)) : 0;
}

/** 1/(scale height) of a gas in diffusive balance, 1/km (gM/R*T, with g in m/s², M in kg/kmol). */
function hydrostatic(z: number, molarMass: number): number {
  return (1000 * gravity(z) * molarMass) / (GAS_CONSTANT * upperTemperature_K(z));
}

/** −d ln(nT)/dz of a minor gas, 1/km (eq. 36 and the transport term of eq. 37). */
function fallOff(gas: Gas, z: number, background: number, mixtureMolarMass: number): number {
  const t = upperTemperature_K(z);
  const k = eddyDiffusion(z);
  const thermalPart = (gas.thermal * temperatureSlope(z)) / t;
  let f = hydrostatic(z, gas.molarMass) + thermalPart;
  if (k > 0) {
    const d = (gas.a / background) * (t / 273.15) ** gas.b;
    f = (d * f + k * hydrostatic(z, mixtureMolarMass)) / (d + k);
  }
  const [Q, U, W, q, u, w] = gas.transport;
  const up = z - U;
  f += Q * up * up * Math.exp(-W * up ** 3);
  if (z < u) f += q * (u - z) ** 2 * Math.exp(-w * (u - z) ** 3);
  return f;
}

/** Molar mass of the mixture that eddies carry: sea-level air up to 100 km, nitrogen above (text to eq. 36). */
function meanMolarMass(z: number): number {
  return z <= 100 ? MEAN_MOLAR_MASS_SEA_LEVEL : nitrogen.molarMass;
}

/** Number densities 1/m³ of N2, O, O2, Ar, He and H on a grid of altitudes. */
interface Composition {
  readonly z_km: Float64Array;
  readonly numbers: readonly [
    N2: Float64Array,
    O: Float64Array,
    O2: Float64Array,
    Ar: Float64Array,
    He: Float64Array,
    H: Float64Array,
  ];
}

/** Steps of the grid: 0.05 km up to 150 km, where diffusion takes over from mixing; 0.5 km above. */
const FINE_STEP_KM = 0.05;
const COARSE_STEP_KM = 0.5;
const FINE_CELLS = Math.round((HYDROGEN_FROM_KM - UPPER_BASE_KM) / FINE_STEP_KM);
const COARSE_CELLS = Math.round((UPPER_TOP_KM - HYDROGEN_FROM_KM) / COARSE_STEP_KM);

function grid(): Float64Array {
  const z = new Float64Array(FINE_CELLS + COARSE_CELLS + 1);
  for (let i = 0; i < z.length; i++) {
    z[i] =
      i <= FINE_CELLS
        ? UPPER_BASE_KM + i * FINE_STEP_KM
        : HYDROGEN_FROM_KM + (i - FINE_CELLS) * COARSE_STEP_KM;
  }
  return z;
}

/**
 * n(z) = n(86 km)·T(86 km)/T·exp(−∫ f dz), trapezoidal (eqs. 34 and 37). `f` gets the molar mass of the mixture
 * in the cell, which jumps at 100 km: taken at the nodes, the jump alone would cost 1.4e-4 of every number above.
 */
function integrate(
  z: Float64Array,
  baseNumber: number,
  f: (i: number, mixtureMolarMass: number) => number,
): Float64Array {
  const n = new Float64Array(z.length);
  let sum = 0;
  let mass = meanMolarMass(z[0]!);
  let before = f(0, mass);
  n[0] = baseNumber;
  for (let i = 1; i < z.length; i++) {
    const massHere = meanMolarMass(0.5 * (z[i - 1]! + z[i]!));
    if (massHere !== mass) before = f(i - 1, massHere);
    mass = massHere;
    const here = f(i, mass);
    sum += 0.5 * (before + here) * (z[i]! - z[i - 1]!);
    before = here;
    n[i] = ((baseNumber * BASE_TEMPERATURE_K) / upperTemperature_K(z[i]!)) * Math.exp(-sum);
  }
  return n;
}

/** Hydrogen (eqs. 39 and 40): from 500 km up in diffusive balance, below it an upward flux. */
function integrateHydrogen(z: Float64Array, background: (i: number) => number): Float64Array {
  const n = new Float64Array(z.length);
  const level = FINE_CELLS + Math.round((HYDROGEN_LEVEL_KM - HYDROGEN_FROM_KM) / COARSE_STEP_KM);
  const temperatureAtLevel = upperTemperature_K(HYDROGEN_LEVEL_KM);
  const relative = (i: number) => (upperTemperature_K(z[i]!) / temperatureAtLevel) ** (1 + hydrogen.thermal);
  const flow = (i: number, tau: number) => {
    const d = (hydrogen.a / background(i)) * (upperTemperature_K(z[i]!) / 273.15) ** hydrogen.b;
    return (hydrogen.flux / d) * relative(i) * Math.exp(tau);
  };
  n[level] = hydrogen.numberAt500km;
  for (let i = level + 1, tau = 0; i < z.length; i++) {
    tau +=
      0.5 *
      (hydrostatic(z[i - 1]!, hydrogen.molarMass) + hydrostatic(z[i]!, hydrogen.molarMass)) *
      (z[i]! - z[i - 1]!);
    n[i] = (hydrogen.numberAt500km / relative(i)) * Math.exp(-tau);
  }
  let tau = 0;
  let carried = 0;
  for (let i = level - 1; i >= FINE_CELLS; i--) {
    const dz = z[i + 1]! - z[i]!;
    const above = flow(i + 1, tau);
    tau -= 0.5 * (hydrostatic(z[i + 1]!, hydrogen.molarMass) + hydrostatic(z[i]!, hydrogen.molarMass)) * dz;
    carried += 0.5 * (above + flow(i, tau)) * dz * 1000;
    n[i] = ((hydrogen.numberAt500km + carried) / relative(i)) * Math.exp(-tau);
  }
  return n;
}

/** Composition from 86 to 1000 km by the standard's integrals, in some 15 ms. */
export function upperComposition(): Composition {
  const z = grid();
  const n2 = integrate(z, nitrogen.baseNumber, (i, mass) => hydrostatic(z[i]!, mass));

  const o = integrate(z, atomicOxygen.baseNumber, (i, mass) => fallOff(atomicOxygen, z[i]!, n2[i]!, mass));
  const o2 = integrate(z, oxygen.baseNumber, (i, mass) => fallOff(oxygen, z[i]!, n2[i]!, mass));
  const heavy = (i: number) => n2[i]! + o[i]! + o2[i]!;
  // The traces above 100 km are stirred into the three heavy gases as they are there, not into nitrogen alone.
  const heavyMass = (i: number, mass: number) =>
    mass === nitrogen.molarMass
      ? (n2[i]! * mass + o[i]! * atomicOxygen.molarMass + o2[i]! * oxygen.molarMass) / heavy(i)
      : mass;
  const ar = integrate(z, argon.baseNumber, (i, mass) => fallOff(argon, z[i]!, heavy(i), heavyMass(i, mass)));
  const he = integrate(z, helium.baseNumber, (i, mass) =>
    fallOff(helium, z[i]!, heavy(i), heavyMass(i, mass)),
  );
  const h = integrateHydrogen(z, (i) => heavy(i) + ar[i]! + he[i]!);
  return { z_km: z, numbers: [n2, o, o2, ar, he, h] };
}

/** ln p (Pa) and ln ρ (kg/m³) on the grid. */
interface UpperTable {
  readonly lnPressure: Float64Array;
  readonly lnDensity: Float64Array;
}

function makeTable(): UpperTable {
  const { z_km, numbers } = upperComposition();
  const masses = [nitrogen, atomicOxygen, oxygen, argon, helium, hydrogen].map(
    (gas) => gas.molarMass / AVOGADRO,
  );
  const lnPressure = new Float64Array(z_km.length);
  const lnDensity = new Float64Array(z_km.length);
  for (let i = 0; i < z_km.length; i++) {
    let count = 0;
    let density = 0;
    for (let k = 0; k < 6; k++) {
      count += numbers[k]![i]!;
      density += numbers[k]![i]! * masses[k]!;
    }
    lnPressure[i] = Math.log(count * BOLTZMANN * upperTemperature_K(z_km[i]!));
    lnDensity[i] = Math.log(density);
  }
  return { lnPressure, lnDensity };
}

let table: UpperTable | undefined;

/** Writes pressure and density at 86 to 1000 km geometric into `into`. */
export function upperPressureAndDensity(
  z_km: number,
  into: { pressure_Pa: number; density_kg_m3: number },
): void {
  table ??= makeTable();
  const place =
    z_km < HYDROGEN_FROM_KM
      ? (z_km - UPPER_BASE_KM) / FINE_STEP_KM
      : FINE_CELLS + (z_km - HYDROGEN_FROM_KM) / COARSE_STEP_KM;
  const i = Math.min(Math.max(Math.floor(place), 0), table.lnPressure.length - 2);
  const part = place - i;
  const { lnPressure, lnDensity } = table;
  into.pressure_Pa = Math.exp(lnPressure[i]! + part * (lnPressure[i + 1]! - lnPressure[i]!));
  into.density_kg_m3 = Math.exp(lnDensity[i]! + part * (lnDensity[i + 1]! - lnDensity[i]!));
}
