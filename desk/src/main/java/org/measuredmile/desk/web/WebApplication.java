package org.measuredmile.desk.web;

import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import java.util.Map;
import org.springframework.boot.Banner;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.EnableAutoConfiguration;
import org.springframework.boot.security.autoconfigure.UserDetailsServiceAutoConfiguration;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.ComponentScan;
import org.springframework.context.annotation.Configuration;
import org.springframework.context.support.GenericApplicationContext;

/// The web app put together: server, security, templates and the pages of this package.
@Configuration(proxyBeanMethods = false)
// There are no accounts, so no user is made up either.
@EnableAutoConfiguration(exclude = UserDetailsServiceAutoConfiguration.class)
@ComponentScan
class WebApplication {
    private static final String LARGEST_FILE = "512MB";
    private static final String LARGEST_UPLOAD = "2GB";

    /// Starts the server on this machine's own address.
    ///
    /// @param port 0 for any free one
    static ConfigurableApplicationContext start(Desk desk, int port) {
        var application = new SpringApplication(WebApplication.class);
        application.setBannerMode(Banner.Mode.OFF);
        application.setLogStartupInfo(false);
        application.setLazyInitialization(true);
        application.addInitializers(context -> {
            if (context instanceof GenericApplicationContext registry) {
                registry.registerBean(Desk.class, () -> desk);
            }
        });
        application.setDefaultProperties(Map.ofEntries(
                Map.entry("server.address", "127.0.0.1"),
                Map.entry("server.port", Integer.toString(port)),
                Map.entry("server.shutdown", "graceful"),
                Map.entry("server.tomcat.max-part-count", "4000"),
                Map.entry("server.tomcat.max-swallow-size", "-1"),
                Map.entry("server.compression.enabled", "true"),
                Map.entry("server.compression.mime-types", "text/html,text/css,text/javascript,text/csv"),
                Map.entry("spring.servlet.multipart.max-file-size", LARGEST_FILE),
                Map.entry("spring.servlet.multipart.max-request-size", LARGEST_UPLOAD),
                Map.entry("spring.servlet.multipart.resolve-lazily", "true"),
                Map.entry("spring.web.resources.cache.cachecontrol.no-cache", "true"),
                Map.entry("spring.jmx.enabled", "false"),
                Map.entry("spring.main.log-startup-info", "false"),
                Map.entry("management.endpoints.web.exposure.include", "health"),
                Map.entry("management.endpoints.access.default", "read-only"),
                Map.entry("logging.level.root", "warn")));
        return application.run();
    }

    @Bean
    TemplateEngine templates() {
        var engine = TemplateEngine.createPrecompiled(
                null, ContentType.Html, WebApplication.class.getClassLoader(), "org.measuredmile.desk.web.page");
        engine.setTrimControlStructures(true);
        return engine;
    }
}
