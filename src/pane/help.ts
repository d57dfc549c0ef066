/** Finding a function in the help page: every word typed must stand somewhere in its article. */
import './help.css';

const plain = (text: string | null): string => (text ?? '').toLowerCase();

function findIn(page: Document, search: HTMLInputElement): void {
  const found = page.querySelector('#found');
  const articles = [...page.querySelectorAll('article')].map((article) => ({
    article,
    text: plain(article.textContent),
  }));
  const sections = [...page.querySelectorAll('section')];

  function show(): void {
    const words = plain(search.value)
      .split(/\s+/)
      .filter((word) => word !== '');
    let shown = 0;
    for (const { article, text } of articles) {
      article.hidden = !words.every((word) => text.includes(word));
      if (!article.hidden) shown++;
    }
    for (const section of sections) section.hidden = section.querySelector('article:not([hidden])') === null;
    if (found === null) return;
    found.textContent =
      words.length === 0
        ? `${articles.length} functions`
        : shown === 0
          ? 'No function mentions this. Try a single word, such as drop or grommet.'
          : `${shown} of ${articles.length} functions`;
  }

  search.addEventListener('input', show);
  show();
}

// The page on installing has none: it is read from its beginning to its end.
const search = document.querySelector<HTMLInputElement>('#search');
if (search !== null) findIn(document, search);
