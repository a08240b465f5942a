package org.measuredmile.desk.web;

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
        return new Serving(context, port);
    }

    private record Serving(ConfigurableApplicationContext context, int port) implements Served {
        @Override
        public void close() {
            context.close();
        }
    }
}
