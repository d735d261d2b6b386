/** Characters that JSON may hold raw but that a terminal acts on: DEL, C1 controls, direction overrides. */
const unsafe = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]/gu;

const figureOrder = ['value', 'low', 'high', 'basis', 'reason', 'assumptions'];

/**
 * A plain document as JSON, two spaces deep, the parts of a figure in a fixed order, ending in a line feed. Control
 * characters are escaped, so that the text is safe on a terminal and loses nothing.
 */
export function plainJson(document: unknown): string {
  return `${harmless(JSON.stringify(document, figuresInOrder, 2))}\n`;
}

/** The same on one line. */
export function jsonLine(document: unknown): string {
  return `${harmless(JSON.stringify(document, figuresInOrder))}\n`;
}

function harmless(text: string): string {
  return text.replace(unsafe, (c) => `\\u${c.charCodeAt(0).toString(16).padStart(4, '0')}`);
}

function figuresInOrder(_key: string, value: unknown): unknown {
  return typeof value === 'object' && value !== null && 'low' in value ? inOrder(value, figureOrder) : value;
}

/** The same fields, those named first and in that order. */
export function inOrder(record: object, order: readonly string[]): Record<string, unknown> {
  const fields = Object.entries(record);
  const first = order.flatMap((name) => fields.filter(([key]) => key === name));
  return Object.fromEntries([...first, ...fields.filter(([key]) => !order.includes(key))]);
}
