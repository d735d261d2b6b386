import type { VerdictCode } from '../../review/types.ts';

/** A verdict in two or three words, for a list. */
export const outcomeWords: Readonly<Record<VerdictCode, string>> = {
  'in-orbit': 'in orbit',
  'orbit-off-target': 'orbit off target',
  'orbit-decaying': 'orbit decays',
  'suborbital-out-of-propellant': 'tanks dry',
  'suborbital-early-cutoff': 'cut off early',
  'suborbital-stage-not-lit': 'stage not lit',
  'suborbital-lost-in-flight': 'lost in flight',
  'suborbital-as-planned': 'suborbital as planned',
  escape: 'escaped',
  'started-in-orbit': 'began in orbit',
  undetermined: 'undetermined',
};
