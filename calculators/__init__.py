"""The workroom's arithmetic: cloth, pieces, hems and corners, declared once and shown everywhere."""
