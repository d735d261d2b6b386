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

/** What a picture is of: one flight, or several under a name of their own. */
export type PictureOf =
  | Review
  | {
      /** Beginning of the file names. */
      readonly file: string;
      /** Line under the picture. */
      readonly caption: string;
    };

/** `margin.svg` beside the name of the log. */
function fileName(of: PictureOf, name: string, ending: string): string {
  const file = 'source' in of ? of.source.file : of.file;
  const log = file.replace(/\.[^.]*$/u, '').replace(/[^\p{L}\p{N}._-]+/gu, '-');
  return `${log}-${name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}.${ending}`;
}

function captionOf(of: PictureOf): string {
  if (!('source' in of)) return `${of.caption} · lossbook`;
  const { mission, source } = of;
  const attempt = mission.attempt === null ? null : `attempt ${mission.attempt}`;
  const flight = [mission.name ?? source.file, mission.vehicle, mission.pilot, attempt, mission.date];
  return [...flight, 'lossbook'].filter((part) => part !== null).join(' · ');
}

function svgText({ drawing, title, note }: SavedPicture, of: PictureOf): string {
  const style = getComputedStyle(document.documentElement);
  const caption = captionOf(of);
  return drawingText(
    inked(captioned(drawing, title, note, caption), (token) => style.getPropertyValue(token).trim()),
  );
}

export function saveSvg(picture: SavedPicture, of: PictureOf, name: string): void {
  saveFile(
    fileName(of, name, 'svg'),
    new Blob([svgText(picture, of)], { type: 'image/svg+xml;charset=utf-8' }),
  );
}

export async function savePng(picture: SavedPicture, of: PictureOf, name: string): Promise<void> {
  const image = new Image();
  image.src = `data:image/svg+xml;charset=utf-8,${encodeURIComponent(svgText(picture, of))}`;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = image.naturalWidth * density;
  canvas.height = image.naturalHeight * density;
  canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
  const dots = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/png'));
  if (dots !== null) saveFile(fileName(of, name, 'png'), dots);
}

export function saveCsv(text: string, of: PictureOf, name: string): void {
  saveFile(fileName(of, name, 'csv'), new Blob([text], { type: 'text/csv;charset=utf-8' }));
}
