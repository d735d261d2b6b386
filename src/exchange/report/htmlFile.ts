import { type Drawing, draw, drawingText } from './drawing.ts';
import { reportStyle } from './reportStyle.ts';

/**
 * A report as one HTML file: no network, no script, and its own policy forbids both. Texts are escaped.
 * @param sheet what stands on the sheet of paper
 */
export function htmlFile(title: string, sheet: readonly (Drawing | null)[]): string {
  const head = [
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width,initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`,
    drawingText(draw('title', {}, title)),
    `<style>${reportStyle}</style>`,
  ];
  const body = drawingText(draw('div', { class: 'sheet' }, sheet));
  return `<!doctype html>\n<html lang="en">\n<head>\n${head.join('\n')}\n</head>\n<body>\n${body}\n</body>\n</html>\n`;
}
