"""`python -m builder` is the command `seamboard`."""

from builder.commands import main

if __name__ == "__main__":
    main()
