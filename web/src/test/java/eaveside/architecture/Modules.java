package eaveside.architecture;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * The modules as the POMs tell of them: a module is named by its artifact ({@code eaveside-visits}: visits), lies in the package
 * of that name, and leans on what its POM depends on, for more than tests.
 */
final class Modules {
    private static final String PREFIX = "eaveside-";

    /** The project's folder, from that of this module, where its tests run. */
    static final Path ROOT = Path.of("..").toAbsolutePath().normalize();

    /** What a module leans on, by name, in the order of the build. */
    private final Map<String, Set<String>> leansOn = new LinkedHashMap<>();

    private final Map<String, Path> folders = new LinkedHashMap<>();

    private Modules() {}

    static Modules read() {
        Modules modules = new Modules();
        for (String folder : texts(pom(ROOT), "module")) {
            Element pom = pom(ROOT.resolve(folder));
            String name = child(pom, "artifactId").substring(PREFIX.length());
            Set<String> others = new TreeSet<>();
            NodeList dependencies = pom.getElementsByTagName("dependency");
            for (int i = 0; i < dependencies.getLength(); i++) {
                Element dependency = (Element) dependencies.item(i);
                String artifact = child(dependency, "artifactId");
                if (artifact.startsWith(PREFIX) && !child(dependency, "scope").equals("test")) {
                    others.add(artifact.substring(PREFIX.length()));
                }
            }
            modules.leansOn.put(name, others);
            modules.folders.put(name, ROOT.resolve(folder));
        }
        return modules;
    }

    /** In the order of the build. */
    List<String> names() {
        return List.copyOf(leansOn.keySet());
    }

    /** Modules that offer use cases; they lie beside one another in one folder. */
    List<String> services() {
        return names().stream()
                .filter(name -> folder(name).getParent().endsWith("services"))
                .toList();
    }

    Path folder(String name) {
        Path folder = folders.get(name);
        if (folder == null) {
            throw new IllegalArgumentException("no module " + name);
        }
        return folder;
    }

    /** What the module's POM names. */
    Set<String> leansOn(String name) {
        return leansOn.getOrDefault(name, Set.of());
    }

    /** Everything that the module can reach, itself too. */
    Set<String> reach(String name) {
        Set<String> reached = new LinkedHashSet<>();
        List<String> open = new ArrayList<>(List.of(name));
        while (!open.isEmpty()) {
            String next = open.removeFirst();
            if (reached.add(next)) {
                open.addAll(leansOn(next));
            }
        }
        return reached;
    }

    /** The sources that the module's own classes are made of. */
    List<Path> sources(String name) {
        Path java = folder(name).resolve("src/main/java");
        if (!Files.isDirectory(java)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(java)) {
            return files.filter(file -> file.toString().endsWith(".java")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Element pom(Path folder) {
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return factory.newDocumentBuilder()
                    .parse(folder.resolve("pom.xml").toFile())
                    .getDocumentElement();
        } catch (ParserConfigurationException | SAXException | IOException e) {
            throw new IllegalStateException(folder.toString(), e);
        }
    }

    private static List<String> texts(Element of, String tag) {
        NodeList found = of.getElementsByTagName(tag);
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < found.getLength(); i++) {
            texts.add(found.item(i).getTextContent().strip());
        }
        return texts;
    }

    /** The text of the element's own child of that name; empty where there is none. */
    private static String child(Element of, String tag) {
        for (var node = of.getFirstChild(); node != null; node = node.getNextSibling()) {
            if (node.getNodeName().equals(tag)) {
                return node.getTextContent().strip();
            }
        }
        return "";
    }
}
