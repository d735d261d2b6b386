import * as v from 'valibot';
import { LossbookError } from '../errors.ts';
import { type MissionCard, missionCardSchema } from './cardSchema.ts';

/**
 * A mission card's text, checked field by field.
 * @throws LossbookError card-json-broken, card-unknown-field or card-bad-value; the first fault found.
 */
export function parseCard(name: string, text: string): MissionCard {
  let card: unknown;
  try {
    card = JSON.parse(text.replace(/^\uFEFF/u, ''));
  } catch (error) {
    throw brokenJson(name, text, error instanceof Error ? error.message : String(error));
  }
  const result = v.safeParse(missionCardSchema, card);
  if (result.success) return result.output;
  // An unknown field is told first: the value that it was meant to give is often the one found missing.
  const unknown = result.issues.find(isUnknownField);
  const issue = unknown ?? result.issues[0];
  const field = fieldPath(issue) || 'top level';
  if (unknown !== undefined) {
    throw new LossbookError('card-unknown-field', { field, suggestion: unknown.message }, { file: name });
  }
  throw new LossbookError(
    'card-bad-value',
    { field, value: shownValue(issue.input), expected: issue.message },
    { file: name },
  );
}

type CardIssue = v.InferIssue<typeof missionCardSchema>;

function isUnknownField(issue: CardIssue): boolean {
  return issue.type === 'strict_object' && issue.expected === 'never';
}

/** `vehicle.stages[1].dryMas_kg` */
function fieldPath(issue: CardIssue): string {
  let path = '';
  for (const item of issue.path ?? []) {
    if (typeof item.key === 'number') path += `[${item.key}]`;
    else path += `${path === '' ? '' : '.'}${String(item.key)}`;
  }
  return path;
}

/** The faulty value as it stands in the card, shortened. */
export function shownValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 60 ? `${text.slice(0, 57)}…` : text;
}

/** The parser's complaint with the line that it is about, where the parser says where. */
function brokenJson(name: string, text: string, message: string): LossbookError {
  const position = /position (\d+)/u.exec(message)?.[1];
  const reason = message
    .replace(/ ?\(line \d+ column \d+\)/u, '')
    .replace(/ (in JSON )?at position \d+/u, '')
    .replace(/, "[\s\S]*" is not valid JSON$/u, '');
  if (position === undefined) return new LossbookError('card-json-broken', { reason }, { file: name });
  const row = text.slice(0, Number(position)).split('\n').length;
  return new LossbookError('card-json-broken', { reason }, { file: name, row });
}
