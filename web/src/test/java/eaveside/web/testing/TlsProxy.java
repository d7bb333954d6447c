package eaveside.web.testing;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManagerFactory;

/**
 * The system's nginx before a server of ours, set up as {@code deploy/proxy/nginx.conf} tells people to, with a certificate
 * made for the occasion.
 */
public final class TlsProxy implements AutoCloseable {
    private static final String PASSWORD = "for this run";

    private final Process process;
    private final int port;
    private final Certificate certificate;

    private TlsProxy(Process process, int port, Certificate certificate) {
        this.process = process;
        this.port = port;
        this.certificate = certificate;
    }

    /** In front of what may not be there. */
    public static TlsProxy before(URI server) {
        try {
            Path folder = Files.createTempDirectory(
                    Files.createDirectories(Path.of("target/proxy").toAbsolutePath()), "run");
            Certificate certificate = certificate(folder);
            int port = Server.freePort();
            String advised = Files.readString(Path.of("../deploy/proxy/nginx.conf"))
                    .replace("listen 443 ssl", "listen 127.0.0.1:" + port + " ssl")
                    .replace("server_name eaveside.example.com", "server_name localhost")
                    .replace(
                            "/etc/ssl/eaveside.example.com.pem",
                            folder.resolve("certificate.pem").toString())
                    .replace(
                            "/etc/ssl/private/eaveside.example.com.key",
                            folder.resolve("key.pem").toString())
                    .replace(
                            "http://127.0.0.1:8080;",
                            server.toString().replaceAll("/$", "") + "; proxy_bind " + Server.PROXY + ";");
            Path conf = Files.writeString(folder.resolve("nginx.conf"), """
                    daemon off;
                    worker_processes 1;
                    pid %1$s/pid;
                    error_log %1$s/error.log;
                    events {}
                    http {
                      access_log off;
                      client_body_temp_path %1$s/body;
                      proxy_temp_path %1$s/proxy;
                      fastcgi_temp_path %1$s/fastcgi;
                      uwsgi_temp_path %1$s/uwsgi;
                      scgi_temp_path %1$s/scgi;
                      %2$s
                    }
                    """.formatted(folder, advised));
            Process process = new ProcessBuilder(List.of(
                            "/usr/sbin/nginx",
                            "-p",
                            folder.toString(),
                            "-c",
                            conf.toString(),
                            "-e",
                            folder + "/error.log"))
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("output.log").toFile())
                    .start();
            var proxy = new TlsProxy(process, port, certificate);
            proxy.await(folder);
            return proxy;
        } catch (IOException | GeneralSecurityException e) {
            throw new IllegalStateException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private void await(Path folder) throws InterruptedException {
        for (int i = 0; i < 100 && process.isAlive(); i++) {
            try (var socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
                return;
            } catch (IOException e) {
                TimeUnit.MILLISECONDS.sleep(100);
            }
        }
        close();
        throw new IllegalStateException("the proxy does not start; see " + folder);
    }

    /** Where people go. */
    public URI base() {
        return URI.create("https://localhost:" + port + "/");
    }

    /** What scripts use: it trusts this proxy alone. */
    public HttpClient client() {
        try {
            KeyStore trusted = KeyStore.getInstance(KeyStore.getDefaultType());
            trusted.load(null, null);
            trusted.setCertificateEntry("proxy", certificate);
            var trust = TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
            trust.init(trusted);
            SSLContext context = SSLContext.getInstance("TLS");
            context.init(null, trust.getTrustManagers(), null);
            return HttpClient.newBuilder().sslContext(context).build();
        } catch (GeneralSecurityException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static Certificate certificate(Path folder)
            throws IOException, InterruptedException, GeneralSecurityException {
        Path store = folder.resolve("store.p12");
        int code = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "keytool")
                                .toString(),
                        "-genkeypair",
                        "-alias",
                        "proxy",
                        "-keyalg",
                        "EC",
                        "-groupname",
                        "secp256r1",
                        "-dname",
                        "CN=localhost",
                        "-ext",
                        "SAN=dns:localhost,ip:127.0.0.1",
                        "-validity",
                        "2",
                        "-storetype",
                        "PKCS12",
                        "-keystore",
                        store.toString(),
                        "-storepass",
                        PASSWORD))
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("keytool.log").toFile())
                .start()
                .waitFor();
        if (code != 0) {
            throw new IllegalStateException("no certificate; see " + folder);
        }
        KeyStore keys = KeyStore.getInstance(store.toFile(), PASSWORD.toCharArray());
        pem(
                folder.resolve("certificate.pem"),
                "CERTIFICATE",
                keys.getCertificate("proxy").getEncoded());
        pem(
                folder.resolve("key.pem"),
                "PRIVATE KEY",
                keys.getKey("proxy", PASSWORD.toCharArray()).getEncoded());
        return keys.getCertificate("proxy");
    }

    private static void pem(Path file, String type, byte[] content) throws IOException {
        Files.writeString(
                file,
                "-----BEGIN " + type + "-----\n"
                        + Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(content) + "\n-----END " + type
                        + "-----\n");
    }

    @Override
    public void close() {
        process.destroy();
    }
}
