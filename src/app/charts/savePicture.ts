import { captioned, type Drawing, drawingText, inked } from '../../exchange/report/drawing.ts';
import type { Review } from '../../review/types.ts';
import { saveFile } from '../saveFile.ts';

/** Pictures are saved this wide, px, whatever the screen; a PNG has twice as many dots. */
export const savedWidth_px = 960;
const density = 2;

/** A picture as it is to be saved. */
export interface SavedPicture {
  readonly drawing: Drawing;
  /** Empty where the picture carries its own. */
  readonly title: string;
  readonly note: string;
}

/** `margin.svg` beside the name of the log. */
function fileName(review: Review, name: string, ending: string): string {
  const log = review.source.file.replace(/\.[^.]*$/u, '').replace(/[^\p{L}\p{N}._-]+/gu, '-');
  return `${log}-${name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}.${ending}`;
}

function svgText({ drawing, title, note }: SavedPicture, review: Review): string {
  const style = getComputedStyle(document.documentElement);
  const { mission, source } = review;
  const attempt = mission.attempt === null ? null : `attempt ${mission.attempt}`;
  const flight = [mission.name ?? source.file, mission.vehicle, mission.pilot, attempt, mission.date];
  const caption = [...flight, 'lossbook'].filter((part) => part !== null).join(' · ');
  return drawingText(
    inked(captioned(drawing, title, note, caption), (token) => style.getPropertyValue(token).trim()),
  );
}

export function saveSvg(picture: SavedPicture, review: Review, name: string): void {
  saveFile(
    fileName(review, name, 'svg'),
    new Blob([svgText(picture, review)], { type: 'image/svg+xml;charset=utf-8' }),
  );
}

export async function savePng(picture: SavedPicture, review: Review, name: string): Promise<void> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(picture, review))}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = image.naturalWidth * density;
  canvas.height = image.naturalHeight * density;
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const dots = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (dots !== null) saveFile(fileName(review, name, 'png'), dots);
}

export function saveCsv(text: string, review: Review, name: string): void {
  saveFile(fileName(review, name, 'csv'), new Blob([text], { type: 'text/csv;charset=utf-8' }));
}
