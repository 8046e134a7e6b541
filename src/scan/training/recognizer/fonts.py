"""Gathers the open fonts of fonts.json from their packages into a folder, cut down to the signs that are drawn.

python3 fonts.py FOLDER
"""

import json
import pathlib
import subprocess
import sys

from fontTools import subset
from fontTools.ttLib import TTFont

from texts import SIGNS

HERE = pathlib.Path(__file__).parent


def gather(folder):
    listed = json.loads((HERE / "fonts.json").read_text())
    folder.mkdir(parents=True, exist_ok=True)
    (folder / "package.json").write_text('{"private":true}')
    packages = [f"@fontsource/{font['package']}@{font['version']}" for font in listed if "package" in font]
    subprocess.run(["npm", "install", "--no-audit", "--no-fund", *packages], cwd=folder, check=True)
    for font in listed:
        name = font.get("package") or pathlib.Path(font["file"]).stem
        for weight in (400, 700):
            path = (
                pathlib.Path(font["file"])
                if "file" in font
                else (folder / "node_modules/@fontsource" / name / "files" / f"{name}-latin-{weight}-normal.woff")
            )
            if not path.exists() or ("file" in font and weight == 700):
                continue
            face = TTFont(path, fontNumber=0)
            options = subset.Options(hinting=False, layout_features=[], name_IDs=[], notdef_outline=False)
            cutter = subset.Subsetter(options)
            cutter.populate(text=SIGNS + "–—′″“”‘’_…✓")
            cutter.subset(face)
            face.flavor = None
            where = folder / "cut" / ("held-out" if font.get("heldOut") else "trained") / font["group"]
            where.mkdir(parents=True, exist_ok=True)
            face.save(where / f"{name}-{weight}.ttf")


if __name__ == "__main__":
    gather(pathlib.Path(sys.argv[1]).resolve())
