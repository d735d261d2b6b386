import { effect } from '@preact/signals';
import { render } from 'preact';
import 'uplot/dist/uPlot.min.css';
import './theme.css';
import './page.css';
import './charts/charts.css';
import './review.css';
import './logbook/logbook.css';
import './card/card.css';
import './columns/columns.css';
import './further.css';
import './teaching.css';
import './print.css';
import { App } from './App.tsx';
import { followPrinting } from './charts/printing.ts';
import { route } from './route.ts';
import { loadReview } from './screens/screens.ts';
import { followRoute, job, start } from './state.ts';
import { followTheme } from './theme.ts';

followTheme();
followPrinting();
const page = document.getElementById('page');
if (page !== null) render(<App />, page);
effect(() => {
  if (job.value !== null) void loadReview();
});
void start().then(() =>
  effect(() => {
    route.value;
    void followRoute();
  }),
);
