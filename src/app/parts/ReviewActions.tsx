import { reportHtml } from '../../exchange/report/reportHtml.ts';
import { reviewJson } from '../../exchange/reviewJson.ts';
import type { Analysis } from '../../review/types.ts';
import { saveFile } from '../saveFile.ts';

/** The review on paper, as a report in one file, and as its plain document. */
export function ReviewActions({ analysis }: { readonly analysis: Analysis }) {
  const log = analysis.review.source.file.replace(/\.[^.]*$/u, '');
  const save = (ending: string, type: string, text: string) =>
    saveFile(`${log}-review.${ending}`, new Blob([text], { type: `${type};charset=utf-8` }));
  return (
    <div class="review-actions">
      <button type="button" class="plain" onClick={() => print()}>
        Print
      </button>
      <button type="button" class="plain" onClick={() => save('html', 'text/html', reportHtml(analysis))}>
        Save report
      </button>
      <button
        type="button"
        class="plain"
        onClick={() => save('json', 'application/json', reviewJson(analysis.review))}
      >
        Save JSON
      </button>
    </div>
  );
}
