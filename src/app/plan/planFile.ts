/** Rows of a plan that a person can still edit. */
export const mostRows = 120;

/** `NAME.plan.csv` for any file's name. */
export function planFileName(name: string): string {
  return `${name.replace(/\.gz$/iu, '').replace(/(\.plan)?\.[^.]*$/iu, '')}.plan.csv`;
}
