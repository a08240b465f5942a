package org.measuredmile.desk.web;

import java.io.IOException;
import java.io.OutputStream;
import java.net.URI;
import org.measuredmile.archive.Archive;
import org.measuredmile.desk.WebDoor;
import org.measuredmile.quantity.UnitSystem;
import org.springframework.context.ConfigurableApplicationContext;

/// Opens the web app for the command line, which finds it by the service loader.
public final class Web implements WebDoor {
    @Override
    public Served open(Archive archive, Wish wish) {
        var context = WebApplication.start(new Desk(archive, wish.demo(), UnitSystem.IMPERIAL), wish.port());
        int port = Integer.parseInt(
                context.getEnvironment().getProperty("local.server.port", Integer.toString(wish.port())));
        Thread.ofVirtual().name("warm").start(() -> warm(port));
        return new Serving(context, port);
    }

    /// Asks for the first page once the port answers, so that nobody waits while the app is made.
    private static void warm(int port) {
        try (var page = URI.create("http://127.0.0.1:" + port + "/").toURL().openStream()) {
            page.transferTo(OutputStream.nullOutputStream());
        } catch (IOException missed) {
            // Whoever asks first waits a little longer, and is told there what is wrong.
            return;
        }
    }

    private record Serving(ConfigurableApplicationContext context, int port) implements Served {
        @Override
        public void close() {
            context.close();
        }
    }
}
