/** The help page, which Excel opens for a function, from the catalogue: every function with its parameters and worked examples. */
import { escaped } from '../book/markup';
import type { CellFunction, Example, Parameter } from '../../functions/declare';
import type { CellOut } from '../core/cell/fields';
import { byChapter, signature } from './words';

const shown = (cell: CellOut): string =>
  typeof cell === 'boolean' ? String(cell).toUpperCase() : escaped(String(cell));

function gives(answer: Example['gives']): string {
  if (typeof answer !== 'object') return `<output>${shown(answer)}</output>`;
  const rows = answer.map((row) => `<tr>${row.map((cell) => `<td>${shown(cell)}</td>`).join('')}</tr>`);
  return `<table class="spill">${rows.join('')}</table>`;
}

const example = (example: Example): string => `
  <li>
    <code>=${escaped(example.formula)}</code>
    ${gives(example.gives)}
    <p>${escaped(example.because)}</p>
  </li>`;

function parameter({ name, says, optional, repeats, kind }: Parameter): string {
  const marks = [optional && 'optional', repeats && 'may be repeated', kind.shape === 'range' && 'range'];
  const marked = marks.filter((mark): mark is string => mark !== false).join(', ');
  const choices = (kind.choices ?? []).map(
    (one) => `<li><b>${escaped(one.word)}</b> ${escaped(one.says)}</li>`,
  );
  return `
  <dt><code>${escaped(name)}</code>${marked === '' ? '' : ` <small>${marked}</small>`}</dt>
  <dd>${escaped(says)}${choices.length === 0 ? '' : `<ul>${choices.join('')}</ul>`}</dd>`;
}

const article = (cellFunction: CellFunction): string => `
<article id="${cellFunction.name}">
  <h3>${cellFunction.name}</h3>
  <p>${escaped(cellFunction.says)}</p>
  <p class="signature"><code>=${escaped(signature(cellFunction))}</code></p>
  <details>
    <summary>What it takes</summary>
    <dl>${cellFunction.parameters.map(parameter).join('')}</dl>
    <p class="result">Gives ${escaped(cellFunction.gives.noun)}${
      cellFunction.gives.columns === undefined ? '' : `: ${escaped(cellFunction.gives.columns.join(', '))}`
    }.</p>
  </details>
  <ul class="examples">${cellFunction.examples.map(example).join('')}</ul>
</article>`;

export function helpPage(catalogue: readonly CellFunction[], version: string): string {
  const chapters = [...byChapter(catalogue)].map(
    ([chapter, functions]) =>
      `<section><h2>${escaped(chapter)}</h2>${functions.map(article).join('')}</section>`,
  );
  return `<!doctype html>
<!-- Written by npm run make from the catalogue. -->
<html lang="en">
<head>
  <meta charset="utf-8" />
  <meta name="viewport" content="width=device-width, initial-scale=1" />
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'none'" />
  <title>Hemledger: the functions</title>
</head>
<body>
  <header>
    <h1>Hemledger</h1>
    <p>Type a function in a cell, after an equals sign. This is version ${escaped(version)}.</p>
    <label for="search">Find a function</label>
    <input id="search" type="search" placeholder="drop, yardage, grommet …" autocomplete="off" />
    <p id="found" role="status"></p>
  </header>
  <main>${chapters.join('')}</main>
</body>
</html>
`;
}
