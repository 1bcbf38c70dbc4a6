// Reloads the page when the desk says that it changed. Only the desk serves this script.
(() => {
  const own = decodeURIComponent(location.pathname).slice(1).replace(/(^|\/)$/, '$1index.html');
  const news = new EventSource('/.desk/events');
  let lost = false;
  news.addEventListener('changed', (event) => {
    const paths = JSON.parse(event.data);
    const mine = (path) => path === own || path.startsWith('assets/') || path === '404.html';
    if (document.title === 'The site has a fault' || paths.some(mine)) location.reload();
  });
  news.addEventListener('fault', () => document.title === 'The site has a fault' && location.reload());
  news.addEventListener('error', () => (lost = true));
  // The desk was restarted while the page was open: what it shows may be old.
  news.addEventListener('open', () => lost && location.reload());
})();
