"""What a guide teaches before anybody holds an object: figures for pages and print.

Worked out from the guide and its engine alone; nothing here is drawn or written down.
"""
