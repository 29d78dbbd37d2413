/* Opened from a disk, a page may start no worker. There the search runs in a hidden frame of
   the same page, which answers as a worker would. Anywhere else this does nothing. */
(function () {
  "use strict";
  if (location.protocol !== "file:") return;

  window.Worker = function (address) {
    var worker = new EventTarget();
    var waiting = [];
    var frame = document.createElement("iframe");
    frame.hidden = true;
    frame.title = "search";
    document.body.appendChild(frame);

    var inside = frame.contentWindow;
    function deliver(data) {
      inside.dispatchEvent(new inside.MessageEvent("message", { data: data }));
    }
    inside.postMessage = function (data) {
      worker.dispatchEvent(new MessageEvent("message", { data: data }));
    };
    inside.importScripts = function () {
      return Promise.all(Array.prototype.map.call(arguments, load));
    };

    function load(source) {
      return new Promise(function (done, failed) {
        var script = inside.document.createElement("script");
        script.src = new URL(source, location);
        script.onload = done;
        script.onerror = failed;
        inside.document.head.appendChild(script);
      });
    }

    worker.postMessage = function (data) {
      if (waiting) waiting.push(data); else deliver(data);
    };
    worker.terminate = function () { frame.remove(); };
    load(address).then(function () {
      var held = waiting;
      waiting = null;
      held.forEach(deliver);
    });
    return worker;
  };
})();
