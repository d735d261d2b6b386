import { LossbookError } from '../errors.ts';
import { shownValue } from './parseCard.ts';

/** The error for a value of the card that contradicts another one. */
export function badValue(
  field: string,
  value: unknown,
  expected: string,
  file: string | undefined,
): LossbookError {
  return new LossbookError(
    'card-bad-value',
    { field, value: shownValue(value), expected },
    file === undefined ? {} : { file },
  );
}
