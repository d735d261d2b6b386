import { plainText } from '../plainText.ts';
import { wrapText } from '../wrapText.ts';

/** CCSDS 502.0-B, §7: lines of keyword = value notation are printable ASCII of at most 254 characters. */
const LONGEST_LINE = 254;
const COMMENT_WIDTH = 96;

const spelled: Readonly<Record<string, string>> = {
  '−': '-',
  '–': '-',
  '—': '-',
  '’': "'",
  '‘': "'",
  '“': '"',
  '”': '"',
  '×': 'x',
  '°': ' deg',
  '…': '...',
  '·': '-',
  '±': '+/-',
  µ: 'u',
  ß: 'ss',
};

/** The text in printable ASCII, on one line: marks off letters, known signs spelled, `?` for the rest. */
export function asciiText(text: string): string {
  return plainText(text)
    .replace(/[^ -~]/gu, (c) => spelled[c] ?? c)
    .normalize('NFKD')
    .replace(/\p{Mn}/gu, '')
    .replace(/[^ -~]/gu, '?')
    .replace(/ +/gu, ' ')
    .trim();
}

/** `KEYWORD = value`, the equals signs under each other. */
export function keyword(name: string, value: string, unit?: string): string {
  const line = `${name.padEnd(17)} = ${value}${unit === undefined ? '' : ` [${unit}]`}`;
  return line.slice(0, LONGEST_LINE);
}

/** A name as a value: text values are upper case throughout (§7.5), `UNKNOWN` where nothing is left. */
export function nameValue(name: string): string {
  const text = asciiText(name).toUpperCase();
  return text === '' ? 'UNKNOWN' : text;
}

/** COMMENT lines of one remark, wrapped. */
export function comments(text: string): string[] {
  return wrapText(asciiText(text), COMMENT_WIDTH).map((line) => `COMMENT ${line}`);
}
