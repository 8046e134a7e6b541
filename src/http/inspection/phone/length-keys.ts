import { afterPress } from './after-press.ts'

/**
 * Keys for feet, inches and halves under a length, where fingers type: with them a length is typed on the large
 * figures of the number pad. `abc` brings the letters back, for meters or "about 8 ft".
 */
const KEYS = ['′', '″', '½', '¼', '¾'] as const

export function offerLengthKeys(root: HTMLElement): void {
  if (!matchMedia('(pointer: coarse)').matches) return
  const bar = document.createElement('div')
  bar.className = 'keys'
  for (const sign of [...KEYS, 'abc']) {
    const key = document.createElement('button')
    key.type = 'button'
    key.tabIndex = -1
    key.textContent = sign
    bar.append(key)
  }
  let field: HTMLInputElement | null = null
  // The focus stays in the field, and with it the pad.
  bar.addEventListener('pointerdown', (event) => event.preventDefault())
  bar.addEventListener('click', (event) => {
    const sign = (event.target as HTMLElement).textContent ?? ''
    if (!field || (event.target as HTMLElement).tagName !== 'BUTTON') return
    if (sign === 'abc') {
      field.inputMode = 'text'
      field.blur()
      field.focus()
      return
    }
    const at = field.selectionStart ?? field.value.length
    field.setRangeText(sign, at, field.selectionEnd ?? at, 'end')
    field.dispatchEvent(new Event('input', { bubbles: true }))
  })
  root.addEventListener('focusin', ({ target }) => {
    const input = target instanceof HTMLInputElement && target.matches('input.length') ? target : null
    if (!input) return
    if (input !== field && input.inputMode !== 'text') input.inputMode = 'decimal'
    field = input
    afterPress(place)
  })
  root.addEventListener('focusout', () => afterPress(place))

  /** Under the field that has the focus by now, or nowhere. */
  function place(): void {
    if (field && document.activeElement === field)
      (field.closest('.row') ?? field.closest('.pair'))?.after(bar)
    else bar.remove()
  }
}
