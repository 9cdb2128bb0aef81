// Follows the preview: when the handbook was printed again, the page is loaded
// again. A page out of sight does not listen, for a browser keeps only a few
// connections open; it asks again when it is looked at.
(function () {
  'use strict';
  var mine = document.currentScript.dataset.version;
  var source = null;

  function listen() {
    if (source || document.visibilityState === 'hidden') return;
    source = new EventSource('/.preview/events');
    source.addEventListener('version', function (event) {
      if (event.data !== mine) {
        rest();
        location.reload();
      }
    });
  }

  function rest() {
    if (source) source.close();
    source = null;
  }

  document.addEventListener('visibilitychange', function () {
    if (document.visibilityState === 'hidden') rest();
    else listen();
  });
  window.addEventListener('pagehide', rest);
  window.addEventListener('pageshow', listen);
  listen();
})();
