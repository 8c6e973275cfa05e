/**
 * Hands the samples of a microphone on as they come, one message for each block. A file of its own, since the page's content
 * policy takes no script that is made up on the spot.
 */
class Capture extends AudioWorkletProcessor {
  constructor() {
    super();
    this.block = new Float32Array(4096);
    this.filled = 0;
  }

  process([[samples]]) {
    if (!samples) return true;
    for (let start = 0; start < samples.length;) {
      const count = Math.min(samples.length - start, this.block.length - this.filled);
      this.block.set(samples.subarray(start, start + count), this.filled);
      this.filled += count;
      start += count;
      if (this.filled === this.block.length) this.hand();
    }
    return true;
  }

  hand() {
    this.port.postMessage(this.block, [this.block.buffer]);
    this.block = new Float32Array(4096);
    this.filled = 0;
  }
}

registerProcessor('capture', Capture);
