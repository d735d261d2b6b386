/** Single changes of a flight that are tried, each of one number. That of `turn-in-time` is the moment, s from lift-off. */
export type ChangeKind =
  | 'steer-last-stage'
  | 'pitch-earlier'
  | 'more-tilt'
  | 'less-tilt'
  | 'less-payload'
  | 'burn-longer'
  | 'turn-in-time';
