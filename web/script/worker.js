// Runs worker.wasm off the page's thread. What it says is set down in package wire.
"use strict";
importScripts("../wasm_exec.js");
const go = new Go();
const gone = (why) => postMessage(JSON.stringify({ gone: String(why) }));
WebAssembly.instantiateStreaming(fetch("worker.wasm"), go.importObject)
  .then((made) => go.run(made.instance))
  .then(() => gone("it came to its end"), gone);
