/** The look of the page: a white technical sheet that reads on a phone, on a screen and on A4 or Letter paper, in colour or without. */
export function pageStyle(footer: string): string {
  return `
:root{--ink:#1a1a1a;--quiet:#5c5c5c;--line:#d4d4d4;--mark:#134f8f;color-scheme:light}
*{box-sizing:border-box}
html{background:#fff;-webkit-text-size-adjust:100%}
body{margin:0 auto;max-width:50rem;padding:1.25rem 1.25rem 4rem;color:var(--ink);background:#fff;font:1rem/1.5 system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif;overflow-wrap:break-word}
h1{margin:0;font-size:1.05rem;font-weight:600;color:var(--quiet)}
h2{margin:2.6rem 0 .6rem;padding-top:.5rem;border-top:1px solid var(--line);font-size:1.15rem;line-height:1.3}
h3{margin:1.8rem 0 .4rem;font-size:1.02rem;line-height:1.3}
p,ul,ol{margin:.5rem 0}
ul{padding-left:1.2rem}
ol{padding-left:2.4rem}
li{margin:.25rem 0}
a{color:var(--mark)}
.skip{position:absolute;left:-100rem}
.skip:focus{left:1rem;top:.5rem;padding:.4rem .7rem;background:#fff;border:2px solid var(--mark)}
.hidden{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
.answer-text{margin:.35rem 0 1rem;font-size:1.42rem;line-height:1.35;font-weight:600;text-wrap:pretty}
.caution{padding:.1rem 0 .1rem .8rem;border-left:3px solid var(--ink);font-size:.86rem;line-height:1.42}
.note,.small{color:var(--quiet);font-size:.9rem}
.first{display:grid;grid-template-columns:1.08fr 1fr;gap:0 2.2rem}
.first h2,.first h3{margin:1.1rem 0 .3rem;padding:0;border:0;font-size:1rem}
.first ul{list-style:none;padding:0}
.first li{padding-left:.8rem;text-indent:-.8rem;font-size:.9rem;line-height:1.42}
.first li::before{content:"– ";color:var(--quiet)}
svg{display:block;max-width:100%;height:auto}
svg text{font-family:system-ui,"Segoe UI",Roboto,"Helvetica Neue",Arial,sans-serif}
.interval svg{width:100%;height:94px}
figure{margin:1.4rem 0 1.8rem}
figure .narrow{display:none}
figcaption{margin-top:.35rem;max-width:44rem;font-size:.88rem;line-height:1.45;color:var(--quiet)}
figcaption b{color:var(--ink)}
.table{overflow-x:auto;margin:.8rem 0}
table{border-collapse:collapse;font-size:.88rem;line-height:1.35;font-variant-numeric:tabular-nums}
caption{padding:.2rem 0 .4rem;text-align:left;color:var(--quiet)}
th,td{padding:.22rem .7rem .22rem 0;border-bottom:1px solid #ececec;text-align:left;vertical-align:baseline}
th{font-weight:600}
tbody th{font-weight:400}
thead th{border-bottom:1px solid var(--quiet);vertical-align:bottom}
th:last-child,td:last-child{padding-right:0}
.r,.r th{text-align:right}
td.r,tbody th{white-space:nowrap}
.compact tbody th,.stacked tbody th{white-space:normal}
.compact table,.stacked table{width:100%}
.total tbody tr:last-child>*{border-top:1px solid var(--quiet);border-bottom:0;font-weight:600}
.wide table{font-size:.8rem}
.wide th,.wide td{padding-right:.55rem}
.wide thead th{min-width:3.4em}
.wide thead th:nth-child(2),.wide thead th:nth-child(3){min-width:0}
.mono{font-family:ui-monospace,Consolas,"Liberation Mono",monospace;font-size:.92em;overflow-wrap:anywhere}
.made{overflow-x:auto}
.worked ul{font-size:.88rem;line-height:1.4;columns:19rem;column-gap:2rem}
.worked-title,.worked-name{margin:.8rem 0 .2rem;font-weight:600}
.worked-source,.worked-note{margin:.2rem 0;color:var(--quiet);font-size:.85rem}
math{font-size:1.05em}
math[display=block]{width:fit-content;margin:.4rem 0}
footer{margin-top:2.5rem;padding-top:.6rem;border-top:1px solid var(--line);color:var(--quiet);font-size:.82rem}
@media (min-width:66rem){.table.wide{margin-inline:max(-12rem,calc((52.5rem - 100vw)/2))}}
@media (max-width:40rem){
body{padding:.9rem .9rem 3rem}
.answer-text{font-size:1.18rem;margin-bottom:.7rem}
.first{display:block}
figure .wide{display:none}
figure .narrow{display:block}
.stacked thead{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%)}
.stacked tr{display:block;padding:.4rem 0;border-bottom:1px solid var(--line)}
.stacked th,.stacked td{display:block;padding:.05rem 0;border:0;text-align:left}
.stacked td::before{content:attr(data-head)" ";color:var(--quiet)}
.stacked td:empty{display:none}
}
@page{size:auto;margin:12mm 14mm 15mm;
@bottom-left{content:${cssString(footer)};font:8pt sans-serif;color:#5c5c5c}
@bottom-right{content:"page " counter(page) " of " counter(pages);font:8pt sans-serif;color:#5c5c5c}}
@media print{
html{font-size:9pt}
body{max-width:none;padding:0}
.skip,footer{display:none}
.first{display:grid;grid-template-columns:1.08fr 1fr}
.answer-text{font-size:1.3rem;margin-bottom:.5rem}
.first h2,.first h3{margin:.5rem 0 .15rem}
.first li{margin:.1rem 0;font-size:.88rem;line-height:1.34}
.caution{margin:.35rem 0}
figure .wide{display:block}
figure .narrow{display:none}
figure{margin:.7rem 0 .9rem;break-inside:avoid}
figure svg{width:86%}
figcaption{max-width:none}
.pictures{display:grid;grid-template-columns:1fr 1fr;gap:0 5mm;align-items:start}
.pictures>*{grid-column:1/-1}
.pictures h2,.pictures h3{margin:.4rem 0 0;padding-top:.3rem}
.pictures figure{margin:.2rem 0 .6rem}
.pictures figure:nth-of-type(-n+2){grid-column:auto}
.pictures figure:nth-of-type(-n+2) svg{width:84%}
.pictures figure:nth-of-type(-n+2) figcaption{font-size:.8rem;line-height:1.35;margin-top:.1rem}
.pictures figure:nth-of-type(-n+2) .wide{display:none}
.pictures figure:nth-of-type(-n+2) .narrow{display:block}
h2,h3,caption,.worked-name,.worked-title{break-after:avoid}
h2{margin-top:1.5rem}
tr,li,.caution,.compact,.made table{break-inside:avoid}
thead{display:table-header-group;break-after:avoid}
p{orphans:3;widows:3}
.table,.table.wide,.made{overflow:visible;margin-inline:0}
.wide table{font-size:.72rem}
.wide th,.wide td{padding-right:.4rem}
.comparison~.comparison{break-before:page}
a{color:inherit;text-decoration:none}
a[href]:not([href^="#"])::after{content:" (" attr(href) ")"}
}
`;
}

/** Any text as a CSS string: whatever is not plainly harmless becomes a hexadecimal escape, so that no name can end the string or the sheet. */
export function cssString(text: string): string {
  const escaped = Array.from(text, (character) =>
    /[A-Za-z0-9 ,.:+-]/.test(character) ? character : `\\${character.codePointAt(0)!.toString(16).padStart(6, '0')}`,
  );
  return `"${escaped.join('')}"`;
}
