// Compiles the page's program, makes it and starts it in tasks of their own, so that the browser draws and listens in between.
// What goes wrong is shown in the strip of the loader as it is thrown.
"use strict";
{
  // What else came is read to its end: until then the loader shows how much of it is there, over what is thrown.
  const arrived = async (response) => {
    const r = await response;
    if (r.headers.get("Content-Type") !== "application/wasm") {
      await r.arrayBuffer();
      throw new Error("something else came");
    }
    return r;
  };
  const nextTask = () => new Promise((done) => setTimeout(done));
  WebAssembly.instantiateStreaming = async (response, imports) => {
    const module = await arrived(response).then((r) => WebAssembly.compileStreaming(r)).catch((e) => {
      throw `The page did not arrive whole. Look to the connection, then load it again. (${e.message})`;
    });
    await nextTask();
    const instance = await WebAssembly.instantiate(module, imports);
    await nextTask();
    return { module, instance };
  };
}
