/**
 * Samples as text for a project file: 32-bit floats, lowest byte first, in base64.
 *
 * @param samples - any unit; seven digits are kept
 */
export function samplesToText(samples: Float64Array): string {
  const bytes = new Uint8Array(samples.length * 4);
  const view = new DataView(bytes.buffer);
  samples.forEach((sample, index) => {
    view.setFloat32(index * 4, sample, true);
  });
  let binary = '';
  const chunk = 0x8000;
  for (let start = 0; start < bytes.length; start += chunk) {
    binary += String.fromCharCode(...bytes.subarray(start, start + chunk));
  }
  return btoa(binary);
}

/**
 * Samples back from the text of a project file.
 *
 * @throws RangeError where the text is no such list of floats
 */
export function samplesFromText(text: string): Float64Array {
  const binary = decode(text);
  if (binary === undefined || binary.length % 4 !== 0) {
    throw new RangeError('samplesFromText: text must be base64 of 32-bit floats');
  }
  const view = new DataView(new ArrayBuffer(binary.length));
  for (let index = 0; index < binary.length; index++) view.setUint8(index, binary.charCodeAt(index));
  return Float64Array.from({ length: binary.length / 4 }, (_, index) => view.getFloat32(index * 4, true));
}

function decode(text: string): string | undefined {
  try {
    return atob(text);
  } catch {
    return undefined;
  }
}
