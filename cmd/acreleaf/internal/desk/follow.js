// Follows the desk: asks for news of the page that is open, brings it up to date, and shows what is wrong.

let { made } = document.currentScript.dataset;
let news = null;
let again = 0;

function listen() {
  clearTimeout(again);
  if (news || document.visibilityState === 'hidden') {
    return; // a browser has few connections, and pages that nobody sees would take them all
  }
  news = new EventSource(`/.desk/events?page=${encodeURIComponent(location.pathname)}&made=${made}`);
  news.addEventListener('changed', async () => {
    stop();
    try {
      made = await swap() ?? made;
    } catch (error) {
      console.warn('The page could not be brought up to date.', error);
    }
    listen();
  });
  news.addEventListener('faults', (event) => showFaults(JSON.parse(event.data)));
  news.addEventListener('error', () => {
    if (news?.readyState === EventSource.CLOSED) { // the browser does not try again by itself
      stop();
      again = setTimeout(listen, 500);
    }
  });
}

function stop() {
  news?.close();
  news = null;
}

document.addEventListener('visibilitychange', () => (document.visibilityState === 'hidden' ? stop() : listen()));
addEventListener('pagehide', stop);
addEventListener('pageshow', listen); // a page that the browser had put aside
bringBack();
document.addEventListener('DOMContentLoaded', listen);
