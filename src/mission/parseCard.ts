import * as v from 'valibot';
import { LossbookError } from '../errors.ts';
import { type MissionCard, missionCardSchema } from './cardSchema.ts';

/**
 * A mission card's text, checked field by field.
 * @throws LossbookError card-json-broken, card-unknown-field or card-bad-value; the first fault found.
 */
export function parseCard(name: string, text: string): MissionCard {
  const result = checked(name, text);
  if (result.success) return result.output;
  throw errorsOf(name, result.issues)[0]!;
}

/** All that `parseCard` could throw for this text, unknown fields first; empty where it throws nothing. */
export function faultsOf(name: string, text: string): readonly LossbookError[] {
  try {
    const result = checked(name, text);
    return result.success ? [] : errorsOf(name, result.issues);
  } catch (error) {
    if (error instanceof LossbookError) return [error];
    throw error;
  }
}

function checked(name: string, text: string) {
  let card: unknown;
  try {
    card = JSON.parse(text.replace(/^\uFEFF/u, ''));
  } catch (error) {
    throw brokenJson(name, text, error instanceof Error ? error.message : String(error));
  }
  return v.safeParse(missionCardSchema, card);
}

function errorsOf(name: string, issues: readonly CardIssue[]): LossbookError[] {
  // An unknown field is told first: the value that it was meant to give is often the one found missing.
  const ranked = [...issues.filter(isUnknownField), ...issues.filter((issue) => !isUnknownField(issue))];
  return ranked.map((issue) => {
    const field = fieldPath(issue) || 'top level';
    return isUnknownField(issue)
      ? new LossbookError('card-unknown-field', { field, suggestion: issue.message }, { file: name })
      : new LossbookError(
          'card-bad-value',
          { field, value: shownValue(issue.input), expected: issue.message },
          { file: name },
        );
  });
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
  const position = positionOf(text, message);
  const reason = message
    .replace(/ ?\(line \d+ column \d+\)/u, '')
    .replace(/ (in JSON )?at position \d+/u, '')
    .replace(/, (?:\.\.\.)?"[\s\S]*" is not valid JSON$/u, '');
  if (position === null) return new LossbookError('card-json-broken', { reason }, { file: name });
  const row = text.slice(0, position).split('\n').length;
  return new LossbookError('card-json-broken', { reason }, { file: name, row });
}

/** Some parsers give a position, some the ten characters on both sides of the place; null for neither. */
function positionOf(text: string, message: string): number | null {
  const told = /position (\d+)/u.exec(message)?.[1];
  if (told !== undefined) return Number(told);
  const [, token = '', cut, around = ''] =
    /token '([\s\S]+?)', (\.\.\.)?"([\s\S]*)"(?:\.\.\.)? is not valid JSON$/u.exec(message) ?? [];
  const start = around === '' ? -1 : text.indexOf(around);
  if (start < 0 || text.indexOf(around, start + 1) >= 0) return null;
  return start + (cut === undefined ? Math.max(0, around.indexOf(token)) : 10);
}
