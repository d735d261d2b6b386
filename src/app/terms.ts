/** A word of the trade, explained in two sentences and a formula. */
export interface Term {
  readonly name: string;
  /** Other labels that stand for it on the page. */
  readonly also?: readonly string[];
  readonly text: string;
  /** As METHODS writes it; empty where the sentences are the definition. */
  readonly formula: string;
}

/** Every word that the page uses and a newcomer may not know. */
export const terms: readonly Term[] = [
  {
    name: 'ideal delta-v',
    also: ['ideal, what the engines gave', 'spent'],
    text: 'The speed that the engines would have given in empty space, far from any world. It is the income of the ledger; everything else is where it went.',
    formula: 'Δv = ∫ Tvac/m dt = Σ g₀ · Isp · ln(m start / m end)',
  },
  {
    name: 'speed gained',
    text: 'What became of the delta-v: the speed at the end less the speed at the start. The more of the whole it is, the thriftier the ascent.',
    formula: '|v| end − |v| start',
  },
  {
    name: 'gravity loss',
    also: ['gravity'],
    text: 'Speed that gravity took while the path pointed upward. It grows with every second spent climbing steeply, so a brisk start and an early turn keep it small.',
    formula: '∫ g · sin γ dt, γ = flight-path angle',
  },
  {
    name: 'steering loss',
    also: ['steering'],
    text: 'Thrust that pointed elsewhere than along the path and so turned the path rather than adding speed. A vehicle that points where it goes has none.',
    formula: '∫ T/m · (1 − cos α) dt, α = angle of attack',
  },
  {
    name: 'drag loss',
    also: ['drag'],
    text: 'Speed that the air took by holding the vehicle back. It is mostly paid low and fast, around the highest dynamic pressure.',
    formula: '∫ D/m dt, D = ½ρv² · Cd · A',
  },
  {
    name: 'back pressure',
    text: 'Air presses on the engine’s exit and takes away part of the thrust that it has in vacuum. The loss fades as the air thins.',
    formula: '∫ p · Ae/m dt, p = air pressure, Ae = exit area',
  },
  {
    name: 'hold-down',
    text: 'Delta-v burnt while the engines ran and the vehicle stood still. It buys no speed.',
    formula: '∫ Tvac/m dt until first motion',
  },
  {
    name: 'frame',
    text: 'Speed over the ground is counted on a world that turns, and the turning adds a small pull outward. It is usually a gain of a few m/s; in the inertial frame there is none.',
    formula: '−∫ centrifugal acceleration · v/|v| dt',
  },
  {
    name: 'unexplained',
    text: 'What is left when all entries are taken from the whole. It is always shown and never hidden in another entry; a small one says that log and card agree.',
    formula: 'ideal − all other entries',
  },
  {
    name: 'margin',
    text: 'The delta-v that could still be wasted and the target reached all the same. Below zero the target is out of reach, however well the rest is flown.',
    formula: 'margin = left aboard − to go',
  },
  {
    name: 'delta-v to go',
    also: ['to go'],
    text: 'The least delta-v from here to the target, if it were given in sudden pushes at the best moments. No real flight does better, so what it falls by is what was bought.',
    formula: 'least Σ |ΔV| from the present state to the target orbit',
  },
  {
    name: 'left aboard',
    text: 'The delta-v that the propellant still aboard can give, stage after stage. It needs the dry masses, which the mission card or empty tanks tell.',
    formula: 'Σ g₀ · Isp · ln(m start / m end) of what is unburnt',
  },
  {
    name: 'projected total',
    text: 'What the whole ascent would cost if everything from here on were perfect: spent so far and still to go. It never falls, and each rise is waste that cannot be won back.',
    formula: 'projected total = spent + to go',
  },
  {
    name: 'vehicle’s whole delta-v',
    text: 'All that the vehicle could give from lift-off with full tanks and this payload. The projected total has to stay below it.',
    formula: 'Σ over stages of g₀ · Isp · ln(m full / m empty)',
  },
  {
    name: 'shortfall',
    text: 'The delta-v by which the target was missed. It is the margin at the end, when that is below zero.',
    formula: 'to go − left aboard',
  },
  {
    name: 'off direction',
    text: 'Thrust that pointed elsewhere than where it helped most on the way to the target. Unlike steering loss it is measured against the best direction, not against the path.',
    formula: '∫ T/m · (|λ| − λ · t) dt, λ = primer vector (Lawden)',
  },
  {
    name: 'off time',
    text: 'Thrust in the best direction, but at a moment when a push helps less than it would at another. Long burns cannot all fall on the best moment.',
    formula: '∫ T/m · (1 − |λ|) dt',
  },
  {
    name: 'drift',
    text: 'What waiting costs: the delta-v to go changes while nothing is burnt, since the chance for a cheap push goes by. On a coast to the best moment it is nothing.',
    formula: 'rate of to go along the unpowered path',
  },
  {
    name: 'apoapsis',
    also: ['Altitude and apoapsis'],
    text: 'The highest point of the orbit, given as its altitude. Burning forward at one end of an orbit moves the other end.',
    formula: 'a · (1 + e) − R',
  },
  {
    name: 'periapsis',
    text: 'The lowest point of the orbit, given as its altitude. Only when it is above the air does the orbit last; below the ground it would end there.',
    formula: 'a · (1 − e) − R',
  },
  {
    name: 'eccentricity',
    text: 'How far the orbit is from a circle. Zero is a circle, from one on the vehicle does not come back.',
    formula: 'e = (ra − rp) / (ra + rp)',
  },
  {
    name: 'inclination',
    text: 'The tilt of the orbit against the equator. It cannot be less than the latitude of the launch site without a turn that costs dearly.',
    formula: 'cos i = cos latitude · sin azimuth, at launch',
  },
  {
    name: 'period',
    text: 'The time of one turn around the world. It follows from the size of the orbit alone.',
    formula: '2π · √(a³/GM)',
  },
  {
    name: 'thrust-to-weight',
    text: 'Thrust over the weight at that height. Below one a vehicle that stands cannot rise; far above one it is soon fast in thick air.',
    formula: 'T / (m · g)',
  },
  {
    name: 'pitch and flight path',
    also: ['pitch', 'flight path'],
    text: 'Pitch is where the nose points above the horizon, the flight-path angle is where the vehicle goes. The gap between them is the angle of attack, and what it costs is steering loss.',
    formula: 'sin γ = vertical speed / |v|',
  },
  {
    name: 'angle of attack',
    text: 'The angle between where the nose points and where the vehicle goes. In thick air it bends the vehicle, everywhere it costs steering loss.',
    formula: 'cos α = sin θ sin γ + cos θ cos γ cos(heading − course)',
  },
  {
    name: 'dynamic pressure',
    text: 'How hard the air presses on the vehicle. It peaks some way up, where speed has grown and the air is not yet thin, and limits on it are limits on loads.',
    formula: 'q = ½ρv²',
  },
  {
    name: 'loss rates',
    text: 'What each entry of the ledger takes in each second. The area under a line is its entry.',
    formula: 'g sin γ, T/m (1 − cos α), D/m, p Ae/m',
  },
  {
    name: 'acceleration',
    text: 'What someone aboard would feel: thrust and drag over mass, without gravity. As tanks empty it grows, unless the engines are throttled.',
    formula: '|T − D| / m',
  },
  {
    name: 'specific impulse',
    also: ['Isp in vacuum', 'Isp at sea level', 'Isp'],
    text: 'How much push an engine gets from its propellant: the seconds for which it could hold up the weight of the propellant that it burns. Higher is thriftier.',
    formula: 'Isp = T / (flow · g₀)',
  },
  {
    name: 'interval',
    also: ['95 %'],
    text: 'The range that holds the true value 95 times in 100, for noise and gaps of this log. What an assumption could move is said apart from it.',
    formula: 'low … high, or value ± half',
  },
  {
    name: 'basis',
    text: 'How a figure was come by: measured in the log, derived from what was, identified by a fit, or assumed. What cannot be had is unavailable, with the reason.',
    formula: '',
  },
];

const byLabel = new Map(
  terms.flatMap((term) => [term.name, ...(term.also ?? [])].map((label) => [label.toLowerCase(), term])),
);

/** The term that a label on the page stands for; null for plain words. */
export function termOf(label: string): Term | null {
  return byLabel.get(label.toLowerCase()) ?? null;
}
