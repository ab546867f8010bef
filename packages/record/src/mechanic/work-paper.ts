import { ANSWER_FORM } from "./answer.ts";

/** What a mechanic needs to know of one discrepancy. */
export interface WorkPaper {
  readonly registration: string;
  readonly type: string;
  readonly bookRevision: number;
  readonly discrepancy: string;
  readonly words: string;
  /** `Right wing boot; wing, right side` */
  readonly where: string;
  /** JASC code of the system, where it is known. */
  readonly jasc: string | undefined;
  /** What the book says of the check that found it, as label and text. */
  readonly book: readonly (readonly [label: string, text: string])[];
  /** What became of it until now, oldest first. */
  readonly life: readonly { readonly title: string; readonly when: string; readonly words: string }[];
  /** Pictures as `data:` addresses, so that the file needs nothing else. */
  readonly photos: readonly string[];
  /** When the paper was made, in words. */
  readonly madeOn: string;
}

const ESCAPES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};
const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ESCAPES[sign] ?? sign);
/** Inside a script, no text may end it. */
const inScript = (value: unknown): string => JSON.stringify(value).replaceAll("<", "\\u003c");

/**
 * One discrepancy as a page in one file: what is needed to fix it, and a form that writes down what was done as a file
 * to send back. It opens in any browser, with no net, and sends nothing by itself.
 */
export function workPaper(paper: WorkPaper): string {
  const { registration, type, words, where, jasc, book, life, photos, madeOn, bookRevision } = paper;
  const title = `${registration}: ${words}`;
  const rows = [
    ["Aircraft", `${registration}, ${type}`],
    ["Where", where],
    ...(jasc === undefined ? [] : [["System", `JASC ${jasc}`]]),
    ...book,
  ].map(([label = "", text = ""]) => `<div><dt>${escaped(label)}</dt><dd>${escaped(text)}</dd></div>`);
  const steps = life.map(
    (step) =>
      `<li><b>${escaped(step.title)}</b> <span>${escaped(step.when)}</span><br>${escaped(step.words)}</li>`,
  );
  const pictures = photos.map(
    (address, at) => `<img src="${escaped(address)}" alt="Photo ${at + 1} of ${escaped(words)}">`,
  );
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; img-src data:; style-src 'unsafe-inline'; script-src 'unsafe-inline'">
<title>${escaped(title)}</title>
<style>${STYLE}</style>
</head>
<body>
<header><b>${escaped(registration)}</b> <span>One discrepancy, for the mechanic</span></header>
<main>
<h1>${escaped(words)}</h1>
<dl>${rows.join("")}</dl>
${pictures.length === 0 ? "" : `<div class="photos">${pictures.join("")}</div>`}
<h2>What became of it</h2>
<ol>${steps.join("")}</ol>
<p class="caution">This paper tells what was seen; it is no maintenance data and no work order. The approved manual, the
rules that apply and your own authority come first. Book revision ${bookRevision}, made ${escaped(madeOn)}.</p>
<h2>What was done</h2>
<form id="answer" novalidate>
<fieldset><legend>Outcome</legend>
<label><input type="radio" name="how" value="put-right" checked> Put right</label>
<label><input type="radio" name="how" value="no-fault-found"> No fault found</label></fieldset>
<label>What was done<textarea name="words" rows="4" maxlength="800" required></textarea></label>
<label>Day<input name="on" type="date"></label>
<label>Reference of the entry or work order<input name="reference" maxlength="120"></label>
<label>Released by, with certificate<input name="releasedBy" maxlength="200" required></label>
<p id="fault" role="alert"></p>
<button type="submit">Save the answer as a file</button>
<p>Then send that file back to whoever sent you this. Nothing is sent by this page.</p>
</form>
</main>
<script>
const of = ${inScript({ witnessmarkAnswer: ANSWER_FORM, aircraft: registration, discrepancy: paper.discrepancy })};
const form = document.getElementById("answer");
form.addEventListener("submit", (event) => {
  event.preventDefault();
  const said = Object.fromEntries(new FormData(form));
  const fault = said.words.trim() === "" ? "Say what was done." : said.releasedBy.trim() === "" ? "Say who released it." : "";
  document.getElementById("fault").textContent = fault;
  if (fault !== "") return;
  const words = [said.words.trim(), said.on === "" ? "" : "on " + said.on, said.reference.trim()].filter(Boolean).join("; ");
  const answer = { ...of, how: said.how, words, releasedBy: said.releasedBy.trim() };
  const link = document.createElement("a");
  link.href = URL.createObjectURL(new Blob([JSON.stringify(answer, null, 2)], { type: "application/json" }));
  link.download = (of.aircraft + "-answer.json").toLowerCase();
  link.click();
});
</script>
</body>
</html>
`;
}

/* A sheet like the program's own, with nothing to fetch: paper, ink lines, square corners; by night, and in print. */
const STYLE = `
:root { color-scheme: light dark; --paper: #fbfcf9; --ink: #0f1c28; --ink-2: #3a4750; --rule: #b7c2bb; --button: #0f1c28; --on-button: #fbfcf9; }
@media (prefers-color-scheme: dark) {
  :root { --paper: #14100b; --ink: #f2d8ac; --ink-2: #d3b98d; --rule: #55452f; --button: #c9a873; --on-button: #14100b; }
}
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 17px/1.4 system-ui, sans-serif; font-variant-numeric: tabular-nums; }
header, main { max-width: 720px; margin: 0 auto; padding: 12px 16px; }
header { display: flex; justify-content: space-between; gap: 12px; border-bottom: 2px solid; }
header b { white-space: nowrap; }
header span { text-align: right; color: var(--ink-2); }
h1 { margin: 8px 0 14px; font-size: 26px; line-height: 1.2; overflow-wrap: anywhere; }
h2 { margin: 26px 0 8px; padding-top: 12px; border-top: 1px solid; font-size: 20px; }
dl { margin: 0; }
dl > div { display: grid; grid-template-columns: 110px 1fr; gap: 12px; padding: 6px 0; border-top: 1px solid var(--rule); }
dt { color: var(--ink-2); }
dd { margin: 0; overflow-wrap: anywhere; }
img { max-width: 100%; border: 1px solid; }
.photos { display: grid; gap: 8px; margin-top: 12px; }
ol { margin: 0; padding: 0; list-style: none; }
li { padding: 8px 0; border-top: 1px solid var(--rule); overflow-wrap: anywhere; }
li:first-child { border-top: 0; }
li span { color: var(--ink-2); }
.caution { padding: 10px 12px; border: 2px solid; font-size: 15px; }
form, label { display: grid; gap: 6px; }
form { gap: 16px; }
fieldset { display: grid; margin: 0; padding: 0 12px; border: 1px solid; }
fieldset label { grid-template-columns: 24px 1fr; align-items: center; gap: 12px; min-height: 48px; }
input, textarea, button { font: inherit; color: inherit; background: transparent; border: 1px solid var(--ink); border-radius: 4px; padding: 10px 12px; min-height: 48px; width: 100%; }
input[type="radio"] { width: 24px; height: 24px; min-height: 0; accent-color: var(--ink); }
button { min-height: 64px; background: var(--button); border-color: var(--button); color: var(--on-button); font-weight: 700; }
:focus-visible { outline: 3px solid var(--ink); outline-offset: 2px; }
#fault { margin: 0; font-weight: 700; }
#fault:empty { display: none; }
@media print {
  :root { --paper: #fff; --ink: #000; --ink-2: #000; --rule: #000; }
  button, #fault, form > p { display: none; }
}
`;
