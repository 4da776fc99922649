"""The toolbox of every workbook: cells, lines, formats, print, saving."""
