"""What the scripts share: the environment they set up, the build's steps, the server."""
