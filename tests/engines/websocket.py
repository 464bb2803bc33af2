"""As much of a WebSocket as a test needs to talk to a browser on this machine: texts, one whole message at a time (RFC
6455)."""

from __future__ import annotations

import os
import socket
from base64 import b64encode
from struct import pack, unpack
from urllib.parse import urlsplit

_TEXT, _CLOSE, _PING, _PONG = 1, 8, 9, 10


class WebSocket:
    def __init__(self, address: str, timeout: float):
        """Parameters: address, ws://…; timeout, the longest silence that is waited for [s]."""
        place = urlsplit(address)
        self._socket = socket.create_connection((place.hostname, place.port), timeout)
        self._stream = self._socket.makefile("rb")
        key = b64encode(os.urandom(16)).decode()
        head = [
            f"GET {place.path} HTTP/1.1", f"Host: {place.netloc}", "Upgrade: websocket", "Connection: Upgrade",
            f"Sec-WebSocket-Key: {key}", "Sec-WebSocket-Version: 13",
        ]  # fmt: skip
        self._socket.sendall(("\r\n".join(head) + "\r\n\r\n").encode())
        status = self._stream.readline()
        if b" 101 " not in status:
            raise ConnectionError(status)
        while self._stream.readline().strip():
            pass

    def send(self, text: str) -> None:
        self._send(_TEXT, text.encode())

    def receive(self) -> str:
        """The next text. Raises: ConnectionError when the other side closes; TimeoutError when it says nothing."""
        whole = b""
        while True:
            first, second = self._read(2)
            size = second & 0x7F
            if size == 126:
                (size,) = unpack("!H", self._read(2))
            elif size == 127:
                (size,) = unpack("!Q", self._read(8))
            content, kind = self._read(size), first & 0x0F
            if kind == _CLOSE:
                raise ConnectionError("closed")
            if kind == _PING:
                self._send(_PONG, content)
            elif kind != _PONG:
                whole += content
                if first & 0x80:
                    return whole.decode()

    def close(self) -> None:
        self._stream.close()
        self._socket.close()

    def _send(self, kind: int, content: bytes) -> None:
        size = len(content)
        length = (
            pack("!B", 0x80 | size)
            if size < 126
            else pack("!BH", 0xFE, size)
            if size < 1 << 16
            else pack("!BQ", 0xFF, size)
        )
        mask = os.urandom(4)
        masked = bytes(byte ^ mask[number % 4] for number, byte in enumerate(content))
        self._socket.sendall(bytes([0x80 | kind]) + length + mask + masked)

    def _read(self, count: int) -> bytes:
        content = self._stream.read(count)
        if len(content) < count:
            raise ConnectionError("closed")
        return content
