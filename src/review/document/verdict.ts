export type VerdictCode =
  | 'in-orbit'
  | 'orbit-off-target'
  | 'orbit-decaying'
  | 'suborbital-out-of-propellant'
  | 'suborbital-early-cutoff'
  | 'suborbital-stage-not-lit'
  | 'suborbital-lost-in-flight'
  | 'suborbital-as-planned'
  | 'escape'
  | 'started-in-orbit'
  | 'undetermined';
