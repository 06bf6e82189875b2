/**
 * Pictures with known pixels. `numbered`: a checkerboard of 100 px squares with a cross of two-pixel arms and a number every
 * 500 px. `yard`: sky, rust and bright steel, to judge whether marks can be seen on them.
 */
export const WIDTH_PX = 4000;
export const HEIGHT_PX = 3000;

export async function testPicture(kind: 'numbered' | 'yard'): Promise<ImageBitmap> {
  const canvas = new OffscreenCanvas(WIDTH_PX, HEIGHT_PX);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no canvas');
  if (kind === 'numbered') drawNumbered(context);
  else drawYard(context);
  return createImageBitmap(canvas);
}

function drawNumbered(context: OffscreenCanvasRenderingContext2D): void {
  for (let y = 0; y < HEIGHT_PX; y += 100)
    for (let x = 0; x < WIDTH_PX; x += 100) {
      context.fillStyle = (x + y) % 200 === 0 ? '#b9bfc4' : '#8d949a';
      context.fillRect(x, y, 100, 100);
    }
  context.font = '80px sans-serif';
  for (let y = 500; y < HEIGHT_PX; y += 500)
    for (let x = 500; x < WIDTH_PX; x += 500) {
      context.fillStyle = '#c00000';
      context.fillRect(x - 40, y - 1, 80, 2);
      context.fillRect(x - 1, y - 40, 2, 80);
      context.fillText(`${x} ${y}`, x + 90, y - 90);
    }
}

function drawYard(context: OffscreenCanvasRenderingContext2D): void {
  const random = seeded(7);
  context.fillStyle = '#dbe7f2';
  context.fillRect(0, 0, WIDTH_PX, 900);
  context.fillStyle = '#6b4a36';
  context.fillRect(0, 900, WIDTH_PX, 2100);
  for (let n = 0; n < 60_000; n++) {
    const shade = random();
    context.fillStyle = `rgb(${70 + 110 * shade} ${45 + 60 * shade} ${30 + 40 * shade} / 0.5)`;
    context.fillRect(random() * WIDTH_PX, 900 + random() * 2100, 4 + 30 * random(), 4 + 14 * random());
  }
  context.fillStyle = '#2b2d2f';
  context.fillRect(350, 1150, 700, 900);
  context.fillStyle = '#b8bcc0';
  context.fillRect(1050, 1560, 1500, 90);
  context.fillStyle = '#e9edf0';
  context.fillRect(1050, 1575, 1500, 18);
  context.fillStyle = '#3a3230';
  context.fillRect(2450, 1450, 260, 1250);
  disc(context, 2580, 1605, 90, '#8a8d8f');
  disc(context, 2580, 1605, 45, '#33302e');
  disc(context, 2580, 2450, 150, '#77706b');
  context.fillStyle = '#f4d23c';
  context.fillRect(1050, 1760, 1900, 150);
  context.fillStyle = '#1a1a1a';
  context.font = '90px sans-serif';
  for (let inch = 0; inch <= 12; inch++) {
    context.fillRect(1050 + 150 * inch, 1760, 5, 80);
    context.fillText(String(inch), 1065 + 150 * inch, 1900);
  }
}

function disc(
  context: OffscreenCanvasRenderingContext2D,
  x: number,
  y: number,
  radius: number,
  colour: string,
): void {
  context.fillStyle = colour;
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fill();
}

function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 16807) % 2147483647;
    return state / 2147483647;
  };
}
