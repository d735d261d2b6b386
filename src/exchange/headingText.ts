import type { Inks } from './inks.ts';
import { cutText, length } from './wrapText.ts';

/** A section's heading: its name, a rule to the right edge, and a remark at the end of it. */
export function headingText(name: string, remark: string, ink: Inks, width: number): string {
  const tail = remark === '' ? '' : ` ${cutText(remark, Math.max(1, width - length(name) - 4))}`;
  const rule = '─'.repeat(Math.max(2, width - length(name) - 1 - length(tail)));
  return `${ink.strong(name)} ${ink.faint(rule + tail)}`;
}
