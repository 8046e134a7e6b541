import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import PDFDocument from 'pdfkit'
import sharp from 'sharp'
import { openPdf } from '../../src/scan/child/open-pdf.ts'
import { pagePicture } from '../../src/scan/child/page-picture.ts'
import { type Dice, dice } from './dice.ts'

type Damage = {
  readonly dotsPerInch: number
  /** Most degrees that the paper lay askew. */
  readonly skew: number
  readonly blur: number
  /** Standard deviation of the noise, in steps of gray of 255. */
  readonly noise: number
  /** Gray of the paper, and how much darker it is at its darkest edge. */
  readonly paper: number
  readonly shade: number
  /** How far the ink has faded toward the paper, 0 to 1. */
  readonly fading: number
  readonly specks: number
  readonly stamps: number
  readonly quality: number
  readonly fax: boolean
}

/** Grades of damage, from a new scan of a clean print to a fax of a carbon copy. */
export const GRADES = {
  clean: {
    dotsPerInch: 300,
    skew: 0,
    blur: 0.4,
    noise: 2,
    paper: 250,
    shade: 0,
    fading: 0,
    specks: 0,
    stamps: 0,
    quality: 90,
    fax: false,
  },
  light: {
    dotsPerInch: 300,
    skew: 0.8,
    blur: 0.8,
    noise: 6,
    paper: 238,
    shade: 12,
    fading: 0.1,
    specks: 60,
    stamps: 0,
    quality: 80,
    fax: false,
  },
  fair: {
    dotsPerInch: 220,
    skew: 1.6,
    blur: 0.9,
    noise: 11,
    paper: 222,
    shade: 35,
    fading: 0.25,
    specks: 250,
    stamps: 1,
    quality: 60,
    fax: false,
  },
  bad: {
    dotsPerInch: 170,
    skew: 3,
    blur: 1.1,
    noise: 22,
    paper: 200,
    shade: 60,
    fading: 0.45,
    specks: 700,
    stamps: 2,
    quality: 35,
    fax: false,
  },
  fax: {
    dotsPerInch: 150,
    skew: 1.2,
    blur: 0.7,
    noise: 14,
    paper: 240,
    shade: 15,
    fading: 0.15,
    specks: 900,
    stamps: 0,
    quality: 80,
    fax: true,
  },
} as const satisfies Record<string, Damage>
export type Grade = keyof typeof GRADES

/** A text PDF printed, damaged and scanned: the same pages as pictures without text. The seed decides every blemish. */
export async function scanned(pdf: Buffer, grade: Grade, seed: number): Promise<Buffer> {
  const folder = await mkdtemp(join(tmpdir(), 'asfound-forms-'))
  try {
    const path = join(folder, 'print.pdf')
    await writeFile(path, pdf)
    const opened = await openPdf(path)
    if (!opened.ok) throw new Error(opened.why)
    const pages: { jpeg: Buffer; width: number; height: number }[] = []
    for (let number = 1; number <= opened.pdf.numPages; number++) {
      const page = await opened.pdf.getPage(number)
      const { width, height } = page.getViewport({ scale: 1 })
      const picture = await pagePicture(opened.pdf, page, GRADES[grade].dotsPerInch, 1e8)
      pages.push({ jpeg: await damaged(picture, GRADES[grade], dice(seed * 1009 + number)), width, height })
    }
    await opened.pdf.cleanup()
    return bound(pages)
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

type Raw = { readonly data: Uint8Array; readonly width: number; readonly height: number }

async function damaged(print: Raw, damage: Damage, roll: Dice): Promise<Buffer> {
  const angle = (roll.unit() * 2 - 1) * damage.skew
  const { data, info } = await sharp(print.data, {
    raw: { width: print.width, height: print.height, channels: 1 },
  })
    .rotate(angle, { background: '#ffffff' })
    .resize(print.width, print.height, { fit: 'cover' })
    .blur(Math.max(0.3, damage.blur))
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true })
  const paper = { data: new Uint8Array(data), width: info.width, height: info.height }
  worn(paper, damage, roll)
  if (damage.fax) thresholded(paper)
  return sharp(paper.data, { raw: { width: paper.width, height: paper.height, channels: 1 } })
    .jpeg({ quality: damage.quality })
    .toBuffer()
}

/** Fading, uneven light, noise, specks and stamps, in place. */
function worn({ data, width, height }: Raw, damage: Damage, roll: Dice): void {
  const corner = roll.unit() * Math.PI * 2
  const [gx, gy] = [Math.cos(corner), Math.sin(corner)]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const at = y * width + x
      const light =
        damage.paper - damage.shade * (0.5 + 0.5 * (gx * (x / width - 0.5) + gy * (y / height - 0.5)) * 1.4)
      const ink = (1 - data[at]! / 255) * (1 - damage.fading)
      // The sum of three even throws is near enough to the bell curve.
      const noise = (roll.unit() + roll.unit() + roll.unit() - 1.5) * 2 * damage.noise
      data[at] = Math.max(0, Math.min(255, light * (1 - ink) + noise))
    }
  }
  for (let speck = 0; speck < damage.specks; speck++) {
    const [cx, cy, r] = [roll.whole(0, width - 1), roll.whole(0, height - 1), roll.unit() * 1.8]
    const gray = roll.chance(0.7) ? 40 : 250
    dab({ data, width, height }, cx, cy, r, gray)
  }
  for (let stamp = 0; stamp < damage.stamps; stamp++) ring({ data, width, height }, roll)
}

function dab({ data, width, height }: Raw, cx: number, cy: number, r: number, gray: number): void {
  for (let y = Math.max(0, Math.floor(cy - r)); y <= Math.min(height - 1, cy + r); y++)
    for (let x = Math.max(0, Math.floor(cx - r)); x <= Math.min(width - 1, cx + r); x++)
      if ((x - cx) ** 2 + (y - cy) ** 2 <= r * r) data[y * width + x] = gray
}

/** A rubber stamp: two rings and bars, in half-strength ink, over whatever is there. */
function ring({ data, width, height }: Raw, roll: Dice): void {
  const r = Math.min(width, height) * (0.07 + roll.unit() * 0.05)
  const [cx, cy] = [roll.whole(r, width - r), roll.whole(r, height - r)]
  for (let y = Math.floor(cy - r); y <= cy + r; y++) {
    for (let x = Math.floor(cx - r); x <= cx + r; x++) {
      if (x < 0 || y < 0 || x >= width || y >= height) continue
      const from = Math.hypot(x - cx, y - cy) / r
      const inked =
        (from > 0.95 && from <= 1) ||
        (from > 0.84 && from < 0.87) ||
        (from < 0.75 && Math.abs(y - cy) % (r * 0.4) < r * 0.03)
      if (inked && roll.chance(0.8))
        data[y * width + x] = Math.min(data[y * width + x]!, 120 + roll.whole(0, 40))
    }
  }
}

function thresholded({ data }: Raw): void {
  for (let at = 0; at < data.length; at++) data[at] = data[at]! < 150 ? 0 : 255
}

function bound(
  pages: readonly { readonly jpeg: Buffer; readonly width: number; readonly height: number }[],
): Promise<Buffer> {
  const pdf = new PDFDocument({ autoFirstPage: false, margin: 0, info: { CreationDate: new Date(0) } })
  const chunks: Buffer[] = []
  pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
  for (const { jpeg, width, height } of pages) {
    pdf.addPage({ size: [width, height], margin: 0 })
    pdf.image(jpeg, 0, 0, { width, height })
  }
  return new Promise((resolve, reject) => {
    pdf.on('end', () => resolve(Buffer.concat(chunks)))
    pdf.on('error', reject)
    pdf.end()
  })
}
