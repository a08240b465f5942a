package org.measuredmile.rules;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/// Each tidiness rule finds what is planted for it, and lets the border case pass.
class TidinessRulesTest {
    private static Source java(String text) {
        return new Source("some/src/main/java/Some.java", text);
    }

    @Test
    void aFileOfFourHundredLinesPassesAndOneMoreDoesNot() {
        assertThat(TidinessRules.fileLength(java("\n".repeat(400)))).isEmpty();
        assertThat(TidinessRules.fileLength(java("\n".repeat(401))))
                .singleElement()
                .hasToString(
                        "some/src/main/java/Some.java:401: 401 lines, more than 400; split it by what it is about");
    }

    @Test
    void aLineIsMeasuredInSignsNotInBytes() {
        assertThat(TidinessRules.lineLength(java("ü".repeat(120)))).isEmpty();
        assertThat(TidinessRules.lineLength(java("\n" + "x".repeat(121))))
                .singleElement()
                .extracting(Fault::line)
                .isEqualTo(2);
    }

    @Test
    void aFunctionIsMeasuredFromItsFirstLineToItsClosingBrace() {
        var sixty = "class Some {\n void f() {\n" + "  ;\n".repeat(58) + " }\n}\n";
        var more = "class Some {\n void f() {\n" + "  ;\n".repeat(59) + " }\n}\n";
        assertThat(TidinessRules.code(java(sixty))).isEmpty();
        assertThat(TidinessRules.code(java(more)))
                .singleElement()
                .hasToString("some/src/main/java/Some.java:2: f has 61 lines, more than 60; take a part out");
    }

    @Test
    void unfinishedWorkMachinePathsAndEmptyNamesAreFound() {
        assertThat(TidinessRules.bannedWords(java("// TO" + "DO later"))).hasSize(1);
        assertThat(TidinessRules.bannedWords(java("read(\"/ho" + "me/someone/file\")")))
                .hasSize(1);
        assertThat(TidinessRules.bannedWords(java("// todo is Spanish for all")))
                .isEmpty();
        assertThat(TidinessRules.code(java("class Read" + "Helper {}"))).hasSize(1);
        assertThat(TidinessRules.code(java("import java.util.*;\nclass Some {}")))
                .hasSize(1);
        assertThat(TidinessRules.code(java("import java.util.List;\nclass Some {}")))
                .isEmpty();
    }

    @Test
    void commentsAreBlankedAndLiteralsKept() {
        var source = java("a(); // b\nc(\"// d\"); /* e\n f */ g('\"'); // h");
        assertThat(source.withoutComments()).isEqualTo("a();     \nc(\"// d\");     \n      g('\"');     ");
    }
}
