/** How the figures of a report are defined, each with its source, in the order in which a reader meets them. */
export const methodNotes: readonly { readonly term: string; readonly note: string }[] = [
  {
    term: 'Figures',
    note: 'Beside each figure stands its 95 % interval for noise, gaps and identification, and its basis: measured (read off the log), derived (computed from it), identified (fitted to it), assumed. What a single assumption could move is named apart and is not in the interval.',
  },
  {
    term: 'Ledger',
    note: 'd|v|/dt = T/m·cos α − D/m − g·sin γ + centrifugal·u, integrated from first ignition to the last cutoff of the ascent on a spherical turning world. Ideal is the integral of vacuum thrust over mass (Tsiolkovsky), back pressure that of ambient pressure on the nozzles, steering T/m·(1 − cos α), drag D/m, gravity g·sin γ; the frame entry is the centrifugal acceleration along the path. What is left over is unexplained and never folded into another entry.',
  },
  {
    term: 'Delta-v to go',
    note: 'The least impulsive delta-v in vacuum from the present state to the target in the present plane: two impulses by way of a conic that touches the target at an apsis, or three. A circular orbit’s is Hohmann’s.',
  },
  {
    term: 'Projected total and margin',
    note: 'Projected total = delta-v spent + delta-v to go: the cost of the whole ascent if flown perfectly from that moment. Margin = delta-v still obtainable from what is aboard − delta-v to go. The last crossing of zero is the time from which, at the latest, the target was out of reach; thrust being finite, the real moment is earlier.',
  },
  {
    term: 'What the margin was lost to',
    note: 'The slope of the projected total split with the primer vector (Lawden 1963). These causes are not the ledger’s entries: the ledger says what took the speed, the split says what took the margin. A faultless ascent has off-direction losses too; only the difference from a reference is avoidable.',
  },
  {
    term: 'Orbit',
    note: 'Osculating two-body elements from distance and inertial velocity at the end of the ascent. In orbit means a periapsis at or above the world’s orbit floor; on target, both apsides within the tolerance.',
  },
];
