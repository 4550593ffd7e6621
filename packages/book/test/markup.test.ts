import fc from 'fast-check';
import { SaxesParser } from 'saxes';
import { describe, expect, it } from 'vitest';
import { html, kept, list, table } from '../src/html/markup.ts';

/** Text of a well-formed fragment; throws on one that is not. */
function textOf(markup: string): string {
  const parser = new SaxesParser({ fragment: true });
  let text = '';
  parser.on('text', (piece) => {
    text += piece;
  });
  parser.on('error', (error) => {
    throw error;
  });
  parser.write(markup).close();
  return text;
}

describe('markup', () => {
  it('lets no text become markup', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme-ascii' }), (words) => {
        expect(textOf(html`<p title="${words}">${words}</p>`.markup)).toBe(words);
      }),
    );
    expect(html`<p>${'<script>alert(1)</script>'}</p>`.markup).toBe(
      '<p>&lt;script&gt;alert(1)&lt;/script&gt;</p>',
    );
  });

  it('keeps markup, joins lists, and puts nothing for what is not there', () => {
    expect(html`<p>${html`<b>${'a & b'}</b>`}${undefined}${false}${[1, 'x']}</p>`.markup).toBe(
      '<p><b>a &amp; b</b>1x</p>',
    );
  });

  it('makes tables and lists that hold together', () => {
    const made = table(['a', 'b'], [['<', 1]], [1], 'steps').markup + list(['&']).markup;
    expect(textOf(made).replace(/\s+/g, ' ').trim()).toBe('ab <1 &');
  });

  it('keeps numbers with their units', () => {
    expect(kept('6 x 3.048 m; 1 x 2 ft 3 in')).toBe(
      '6\u00a0x\u00a03.048\u00a0m; 1\u00a0x\u00a02\u00a0ft 3\u00a0in',
    );
  });
});
