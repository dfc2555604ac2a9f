import { readFileSync, readdirSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';

const read = (path: string) => readFileSync(`.output/${path}`, 'utf8');

describe.each(['chrome-mv3', 'firefox-mv3'])('the build in %s', (folder) => {
  const manifest = JSON.parse(read(`${folder}/manifest.json`));

  test('the clip script is at most 60 kB', () => {
    expect(statSync(`.output/${folder}/clip.js`).size).toBeLessThanOrEqual(60_000);
  });

  test('it is Manifest V3 and asks for the least', () => {
    expect(manifest.manifest_version).toBe(3);
    expect(manifest.permissions.toSorted()).toEqual(
      ['activeTab', 'contextMenus', 'scripting', 'storage', 'unlimitedStorage'].toSorted(),
    );
    expect(manifest.host_permissions ?? []).toEqual([]);
    expect(manifest.content_scripts ?? []).toEqual([]);
    expect(manifest.web_accessible_resources ?? []).toEqual([]);
  });

  test('its pages may connect to nothing and run nothing but their own files', () => {
    const policy: string = manifest.content_security_policy.extension_pages;
    const directives = new Map(
      policy.split('; ').map((one) => [one.split(' ')[0], one.split(' ').slice(1).join(' ')]),
    );
    expect(directives.get('default-src')).toBe("'none'");
    expect(directives.get('connect-src')).toBe("'none'");
    expect(directives.get('script-src')).toBe("'self'");
    expect(directives.get('form-action')).toBe("'none'");
  });

  test('its pages hold no script of their own and load nothing from elsewhere', () => {
    for (const page of readdirSync(`.output/${folder}`).filter((name) => name.endsWith('.html'))) {
      const html = read(`${folder}/${page}`);
      expect(html).not.toMatch(/<script(?![^>]*\bsrc=)/);
      expect(html).not.toMatch(/(src|href)="(?!\/|\.)/);
    }
  });
});
