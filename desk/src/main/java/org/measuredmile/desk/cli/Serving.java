package org.measuredmile.desk.cli;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.util.ServiceLoader;
import java.util.concurrent.CountDownLatch;
import org.measuredmile.archive.Archive;
import org.measuredmile.desk.WebDoor;

/// Starts the web app on a free port of this machine and waits until it is stopped.
final class Serving {
    static final int USUAL_PORT = 8731;

    private static final int TRIED = 40;

    private Serving() {}

    static void untilStopped(Archive archive, int wishedPort, boolean demo, Shown shown) throws InterruptedException {
        var door = ServiceLoader.load(WebDoor.class)
                .findFirst()
                .orElseThrow(() -> new Trouble("the web app is not on the class path; start it with ./mile"));
        var stopped = new CountDownLatch(1);
        try (var served = door.open(archive, new WebDoor.Wish(freePort(wishedPort), demo))) {
            shown.line("http://127.0.0.1:" + served.port() + "/");
            shown.out().flush();
            shown.err().println("Serving " + archive.folder() + "; stop it with Ctrl-C.");
            Runtime.getRuntime().addShutdownHook(new Thread(stopped::countDown));
            stopped.await();
        }
    }

    /// The wished port, or the next that nobody uses.
    static int freePort(int wished) {
        for (int port = wished; port < wished + TRIED; port++) {
            try (var socket = new ServerSocket(port, 1, InetAddress.getLoopbackAddress())) {
                return socket.getLocalPort();
            } catch (IOException taken) {
                continue;
            }
        }
        throw new Trouble(
                "ports " + wished + " to " + (wished + TRIED - 1) + " are all taken; give another with --port");
    }
}
