// The scan follows the focus: boxed on the page, and enlarged above it. Enter says that a value was held against the
// paper and goes on to the next one to look at, or to the button; Ctrl or Cmd with Enter confirms all. No letter is a
// key of its own (WCAG 2.2, 2.1.4), and Enter stays what it is on buttons, in running text and on what opens.
const frame = document.querySelector('.confirm')
const form = frame?.querySelector('form.values')

if (frame && form) {
  frame.classList.add('live')
  for (const it of document.querySelectorAll('.with-keys')) it.hidden = false
  const zoom = frame.querySelector('.zoom svg')
  const confirm = form.querySelector('button[value=confirm]')
  const fields = () => [...form.querySelectorAll('.field :is(input:not([type=checkbox]), select, textarea)')]

  const around = (x, y, w, h) => {
    const width = Math.min(1, Math.max(0.5, w + 0.1))
    const height = Math.min(1, h + 0.1)
    const within = (middle, size) => Math.min(Math.max(middle - size / 2, 0), 1 - size)
    return [within(x + w / 2, width), within(y + h / 2, height), width, height]
  }
  const place = (rect, x, y, w, h) => {
    for (const [name, value] of Object.entries({ x, y, width: w, height: h })) rect?.setAttribute(name, value)
  }

  const show = (field) => {
    const { page, box } = field.dataset
    const sheets = [...frame.querySelectorAll('.sheet')]
    const sheet = sheets.find((it) => it.dataset.page === page) ?? sheets.find((it) => it.matches('.now'))
    if (!sheet) return
    for (const it of sheets) it.classList.toggle('now', it === sheet)
    const image = sheet.querySelector('image')
    const shape = Number(image.getAttribute('height')) / 1000
    const [x, y, w, h] = box ? box.split(' ').map(Number) : [0, 0, 0, 0]
    const shownBox = box
      ? [x * 1000 - 4, y * shape * 1000 - 4, w * 1000 + 8, h * shape * 1000 + 8]
      : [0, 0, 0, 0]
    place(sheet.querySelector('.at'), ...shownBox)
    const large = zoom.querySelector('image')
    for (const name of ['href', 'height']) large.setAttribute(name, image.getAttribute(name))
    place(zoom.querySelector('rect') ?? zoom.appendChild(sheet.querySelector('.at').cloneNode()), ...shownBox)
    const [left, top, width, height] = box ? around(x, y, w, h) : [0, 0, 1, 1]
    zoom.setAttribute('viewBox', [left, top * shape, width, height * shape].map((it) => it * 1000).join(' '))
  }

  const seen = (field) => field.closest('.field').querySelector('.seen input')
  const isLeft = (field) => field.dataset.check && !seen(field).checked && field.value === first.get(field)
  const first = new Map(fields().map((it) => [it, it.value]))

  form.addEventListener('focusin', ({ target }) => {
    const field = target.closest('.field')?.querySelector('[name]:not([type=checkbox])')
    if (field) show(field)
  })

  form.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || event.isComposing || event.altKey || event.shiftKey) return
    if (event.ctrlKey || event.metaKey) {
      event.preventDefault()
      form.requestSubmit(confirm)
      return
    }
    const field = event.target
    if (!fields().includes(field) || field.matches('textarea')) return
    event.preventDefault()
    const tick = seen(field)
    if (tick) tick.checked = true
    const all = fields()
    const from = all.indexOf(field)
    const next = [...all.slice(from + 1), ...all.slice(0, from)].find(isLeft)
    ;(next ?? confirm).focus()
  })

  const now = document.activeElement?.closest?.('.field')?.querySelector('[name]')
  if (now) show(now)
}
