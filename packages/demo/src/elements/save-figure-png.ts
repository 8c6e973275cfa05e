/** Pixels for each pixel of the page, so that a printed figure stays sharp. */
const DENSITY = 2;

/**
 * Hands a drawing to the browser as a PNG file to save.
 *
 * @param name - file name
 * @param svg - text of an SVG file with its width and height
 */
export async function saveFigurePng(name: string, svg: string): Promise<void> {
  const source = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = source;
    await image.decode();
    const canvas = document.createElement('canvas');
    canvas.width = image.width * DENSITY;
    canvas.height = image.height * DENSITY;
    canvas.getContext('2d')?.drawImage(image, 0, 0, canvas.width, canvas.height);
    const blob = await new Promise<Blob | null>((resolve) => {
      canvas.toBlob(resolve, 'image/png');
    });
    if (blob) saveBlob(name, blob);
  } finally {
    URL.revokeObjectURL(source);
  }
}

function saveBlob(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => {
    URL.revokeObjectURL(url);
  }, 10_000);
}
