/** Said once in every review, report and on the page. */
export const CAUTIONS: readonly string[] = [
  'For the review of simulated, educational and amateur flights after the fact. Not for go/no-go decisions, range safety or flight termination: those belong to the range, the club’s safety officer, national aviation rules and licensed practice.',
];
