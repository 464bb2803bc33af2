"""What a link or file from somebody else brings, shown before it is taken over."""
