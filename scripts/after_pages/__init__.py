"""What is done to the built pages: scripts joined, requests spared, policy, offline copy, portable copy."""
