import { fonts, palette } from './palette.ts';

const tokens = [...Object.entries(palette), ...Object.entries(fonts)]
  .map(([name, value]) => `--${name}:${value}`)
  .join(';');

const causes = Object.keys(palette)
  .filter((name) => name.startsWith('cause-') && name !== 'cause-unexplained')
  .map((name) => `.${name}{background:var(--${name})}`)
  .join('');

/**
 * The report's style sheet: one paper sheet on screen, whole pages on A4 and Letter. Charts are drawn twice, for
 * wide and narrow screens; the style shows one of them. Nothing in it is fetched.
 */
export const reportStyle = `
:root{color-scheme:light;${tokens}}
*{box-sizing:border-box}
html{background:var(--ground);color:var(--ink);font:15px/1.45 var(--sans);font-variant-numeric:tabular-nums;
-webkit-text-size-adjust:100%;text-size-adjust:100%;print-color-adjust:exact;-webkit-print-color-adjust:exact}
body,p,h1,h2,h3,ul,ol,dl,dd,figure{margin:0;padding:0}
ul,ol{list-style:none}
.sheet{max-width:920px;margin:16px auto;padding:0 40px 36px;background:var(--sheet)}
.top{display:flex;justify-content:space-between;gap:24px;padding:14px 0 10px;border-bottom:2px solid var(--ink)}
.top b{font-weight:700}
.about{margin-top:18px;color:var(--muted);font-size:13px;overflow-wrap:anywhere}
h1{margin:4px 0 4px;max-width:34em;font:400 27px/1.25 var(--serif);text-wrap:balance;overflow-wrap:anywhere}
.about span{display:inline-block;max-width:100%}
p,.moves{text-wrap:pretty}
.detail{max-width:46em}
h2{margin-bottom:6px;font-size:14px;font-weight:650;line-height:1.4;break-after:avoid}
h3{margin-top:10px;font-size:13px;font-weight:650;break-after:avoid}
.strip-head{display:flex;flex-wrap:wrap;justify-content:space-between;gap:0 18px;margin-top:12px;break-after:avoid}
.strip-head h3,.strip-head .labels{margin:0}
.strip-head .labels{font-size:12px}
section{margin-top:26px}
.quiet{color:var(--muted);font-weight:400}
svg{display:block;max-width:100%;height:auto;font-variant-numeric:tabular-nums}
.narrow{display:none}
.chart+.chart{margin-top:4px}
.chart{break-inside:avoid}
.bar{display:flex;height:34px;overflow:hidden}
.bar>span{display:flex;flex-wrap:wrap;min-width:1px;height:34px;overflow:hidden;white-space:nowrap;
color:var(--on-cause);font-size:12px;font-weight:650;line-height:34px;border-left:1px solid var(--sheet)}
.bar>span:first-child{border-left:0}
.bar>span::before{content:"";height:34px}
.bar>span>i{padding:0 8px;font-style:normal}
.labels{display:flex;flex-wrap:wrap;gap:2px 18px;margin-top:6px;font-size:13px}
.line{display:inline-block;width:20px;margin-right:6px;border-top:2px solid;vertical-align:4px}
.line.dashed{border-top-style:dashed}
.swatch{display:inline-block;width:11px;height:11px;margin-right:7px;vertical-align:-1px}
${causes}
.swatch~.moves{padding-left:18px}
.cause-unexplained{background:repeating-linear-gradient(-45deg,var(--cause-unexplained) 0 1.5px,var(--sheet) 1.5px 4px)}
table{border-collapse:collapse;width:100%;font-size:13px}
th{font-weight:400;text-align:left}
thead th{color:var(--muted);font-size:12px;white-space:nowrap}
th,td{padding:4px 0 4px 14px;border-bottom:1px solid var(--rule);vertical-align:baseline}
th:first-child,td:first-child{padding-left:0}
tr{break-inside:avoid}
table,.pair,.bar,.labels,.keep{break-inside:avoid}
.words table{break-inside:auto}
.number{text-align:right;white-space:nowrap}
td.number:not(.quiet){font-weight:500}
.sum th,.sum .number:not(.quiet){font-weight:650}
.under{margin-top:6px;color:var(--muted);font-size:13px}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:0 36px}
.pair>section{min-width:0}
.find{padding:8px 0;border-bottom:1px solid var(--rule);break-inside:avoid}
.find p{font-size:13px}
.find h3{margin:0;display:flex;justify-content:space-between;gap:16px;font-size:14px}
.find h3 span:last-child{white-space:nowrap}
.notes,.find p{max-width:52em}
.notes{font-size:13px}
.notes li{margin:3px 0;padding-left:12px;text-indent:-12px}
.notes li::before{content:"· "}
.notes dt{font-weight:650;margin-top:6px;break-after:avoid}
tr.group th{padding-top:12px;font-weight:650}
svg.key{display:inline-block;margin-right:7px;vertical-align:2px}
thead th.habit{white-space:normal}
.stitched{margin-top:10px}
.stitched .detail{font-size:13px}
.words td,.words th{overflow-wrap:break-word}
.orbit{max-width:340px}
.foot{margin-top:32px;padding-top:12px;border-top:1px solid var(--rule);color:var(--muted);font-size:13px;break-inside:avoid}
@media (max-width:640px){
.sheet{margin:0;padding:0 16px 24px}
.wide{display:none}.narrow{display:block}
.pair{grid-template-columns:1fr}
h1{font-size:22px}
.number.habit{white-space:normal;padding-left:6px;font-size:11px}
thead th.number.habit{font-size:10px;hyphens:auto}
.more{display:none}
}
@media print{
@page{margin:14mm 15mm 15mm}
html{background:none;font-size:10pt}
body{background:none}
.sheet{max-width:none;margin:0;padding:0;background:none}
.wide{display:block}.narrow{display:none}
.pair{grid-template-columns:1fr 1fr;gap:0 24px}
.more{display:table-cell}
h1{font-size:19pt}
h2{font-size:10.5pt}
h3{font-size:9.5pt}
section{margin-top:16pt}
table,.notes,.find p,.under,.foot,.labels{font-size:8.5pt}
.pair th,.pair td{padding-left:8px}
.pair th:first-child{padding-left:0}
thead{display:table-header-group}
p,li{orphans:3;widows:3}
}
`;
