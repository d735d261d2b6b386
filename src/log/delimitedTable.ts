import { LossbookError } from '../errors.ts';
import { eachRow, eachRowInTurns, quotesAreText } from './eachRow.ts';
import { withinLimit } from './limits.ts';
import type { RawTable } from './rawTable.ts';
import { reshapedText } from './reshapedText.ts';
import { RowCollector, type TableLayout } from './rowCollector.ts';
import { tableLayout } from './tableLayout.ts';
import type { Pace } from './watch.ts';

/** A delimited text that is ready to be cut into cells. */
interface Prepared {
  readonly text: string;
  readonly plainQuotes: boolean;
  readonly layout: TableLayout;
}

/**
 * Reads delimited text into a table: separator, number style, preamble, header and units row are found from
 * the content.
 * @throws LossbookError `log-no-table` where nothing makes a table, `log-too-large` over the limits.
 */
export function delimitedTable(content: string, name: string): RawTable {
  const { text, plainQuotes, layout } = prepared(content, name);
  const collector = new RowCollector(layout, name);
  let line = 0;
  eachRow(text, layout.separator, plainQuotes, (cells) => {
    if (line++ >= layout.head.firstData) collector.take(cells);
    return true;
  });
  return collector.finish(text.endsWith('\n'));
}

/** The same for a large text whose reading somebody follows. @throws LossbookError `cancelled` besides. */
export async function delimitedTableInTurns(
  content: string,
  name: string,
  pace: Pace,
  share: (part: number) => number,
): Promise<RawTable> {
  const { text, plainQuotes, layout } = prepared(content, name);
  const collector = new RowCollector(layout, name);
  let line = 0;
  await eachRowInTurns(text, layout.separator, plainQuotes, pace, share, (cells) => {
    if (line++ >= layout.head.firstData) collector.take(cells);
  });
  return collector.finish(text.endsWith('\n'));
}

function prepared(content: string, name: string): Prepared {
  const lines = content.includes('\r') ? content.replace(/\r\n?/gu, '\n') : content;
  const text = reshapedText(lines) ?? lines;
  const plainQuotes = quotesAreText(text);
  const layout = tableLayout(text, plainQuotes);
  if (layout === null) throw new LossbookError('log-no-table', {}, { file: name });
  withinLimit('columns', layout.width, name);
  return { text, plainQuotes, layout };
}
