// Compiles the page's program, makes it and starts it in tasks of their own, so that the browser draws and listens in between.
"use strict";
{
  const nextTask = () => new Promise((done) => setTimeout(done));
  WebAssembly.instantiateStreaming = async (response, imports) => {
    const module = await WebAssembly.compileStreaming(response);
    await nextTask();
    const instance = await WebAssembly.instantiate(module, imports);
    await nextTask();
    return { module, instance };
  };
}
