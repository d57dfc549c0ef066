/** The papers as sheets of paper over the whole page, to look at and to print where the host does not. */
import { createRoot } from 'react-dom/client';
import { useEffect, useRef, type CSSProperties } from 'react';
import type { PaperRole } from '../../book/book';
import type { Band, BandCell } from '../../book/papers/bands';
import { LETTERS } from '../../book/papers/bands';
import { shownEntry, viewOf, type PaperView } from '../../book/papers/page-view';
import { svgOf } from '../../book/papers/svg';
import { LOOKS, USUAL_SIZE } from '../../book/roles';
import type { Paper } from '../../core/papers/paper';
import './print-view.css';

const LINES = { hair: '0.25pt', thin: '0.75pt', medium: '1.5pt' } as const;

function styleOf(role: PaperRole, { from, span, align }: BandCell): CSSProperties {
  const { bold, size = USUAL_SIZE, ink, over, under } = LOOKS[role];
  return {
    gridColumn: `${from + 1} / span ${span}`,
    fontSize: `${size}pt`,
    ...(bold === true && { fontWeight: 700 }),
    ...(ink !== undefined && { color: `#${ink}` }),
    ...(align !== undefined && { textAlign: align }),
    ...(over !== undefined && { borderTop: `${LINES[over]} solid #000` }),
    ...(under !== undefined && { borderBottom: `${LINES[under]} solid #000` }),
  };
}

function Row({
  band: { cells, height, drawn },
  across,
  sign,
}: {
  readonly band: Band;
  readonly across: readonly number[];
  readonly sign: string;
}) {
  return (
    <div
      className="paper-row"
      style={{
        // Words that take a line more than was reckoned push the next row down, never over it.
        minHeight: `${height}pt`,
        gridTemplateColumns: across.map((points) => `${points.toFixed(2)}pt`).join(' '),
      }}
    >
      {drawn !== undefined && (
        <img
          alt={drawn.says}
          src={`data:image/svg+xml,${encodeURIComponent(svgOf(drawn, LETTERS))}`}
          style={{ gridColumn: '1 / -1', width: `${drawn.wide}pt`, height: `${drawn.high}pt` }}
        />
      )}
      {cells.map((cell) => (
        <div
          key={cell.from}
          className={LOOKS[cell.role].wrapped === true ? 'paper-cell wrapped' : 'paper-cell'}
          style={styleOf(cell.role, cell)}
        >
          <span dir="auto">{cell.entry === undefined ? '' : shownEntry(cell.entry, sign)}</span>
        </div>
      ))}
    </div>
  );
}

function Pages({ view, sign }: { readonly view: PaperView; readonly sign: string }) {
  const { paper, wide, high, across, pages } = view;
  const [left, top, right, bottom] = paper.page.margins;
  return (
    <>
      {pages.map((page, at) => (
        <section
          key={at}
          className={`paper-page ${paper.page.size}`}
          aria-label={[paper.title, page.number].filter((one) => one !== '').join(', ')}
          style={{
            width: `${wide}in`,
            // A hair less, so that no rounding asks for another page.
            height: `${high - 0.01}in`,
            padding: `${top}in ${right}in 0 ${left}in`,
          }}
        >
          {page.bands.map((band, row) => (
            <Row key={row} band={band} across={across} sign={sign} />
          ))}
          {page.number !== '' && (
            <div
              className="paper-foot"
              style={{ left: `${left}in`, right: `${right}in`, bottom: `${bottom / 2}in` }}
            >
              <span>{paper.foot}</span>
              <span>{page.number}</span>
            </div>
          )}
        </section>
      ))}
    </>
  );
}

interface ViewProps {
  readonly papers: readonly Paper[];
  readonly sign: string;
  readonly close: () => void;
}

function PrintView({ papers, sign, close }: ViewProps) {
  const first = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    first.current?.focus();
  }, []);
  const views = papers.map(viewOf);
  const pages = views.reduce((sum, one) => sum + one.pages.length, 0);
  return (
    <>
      <div className="print-view-bar">
        <h1>Papers</h1>
        <button
          ref={first}
          type="button"
          onClick={() => {
            window.print();
          }}
        >
          Print
        </button>
        <button type="button" onClick={close}>
          Close
        </button>
        <p>
          {pages} {pages === 1 ? 'page' : 'pages'}, as the job stands now. Print them at 100 %, without
          headers of the browser’s own.
        </p>
      </div>
      {views.map((view, at) => (
        <Pages key={at} view={view} sign={sign} />
      ))}
    </>
  );
}

/** Shows the papers until they are closed; the rest of the page rests meanwhile. */
export function openPrintView(papers: readonly Paper[], sign: string): void {
  const before = document.activeElement;
  const others = [...document.body.children].filter((one): one is HTMLElement => one instanceof HTMLElement);
  const element = document.createElement('div');
  element.className = 'print-view';
  element.setAttribute('role', 'dialog');
  element.setAttribute('aria-modal', 'true');
  element.setAttribute('aria-label', 'Papers to print');
  const root = createRoot(element);
  const close = (): void => {
    root.unmount();
    element.remove();
    for (const one of others) one.inert = false;
    if (before instanceof HTMLElement) before.focus();
  };
  element.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') close();
  });
  for (const one of others) one.inert = true;
  document.body.append(element);
  root.render(<PrintView papers={papers} sign={sign} close={close} />);
}
