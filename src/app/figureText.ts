export { readingText, tickText, timeText } from '../exchange/readingText.ts';
